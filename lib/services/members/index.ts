export {
  createToken,
  endSession,
  endSessions,
  readAccount,
  revokeToken,
  saveProfile,
  setPassword,
  type AccountView,
} from "./account.ts";
export { addMember, makeSignInLink } from "./create.ts";
export { changeMember, listMembers, readMember, type MemberLine, type MemberView } from "./directory.ts";
export {
  createInvitation,
  invitationOf,
  join,
  listInvitations,
  revokeInvitation,
  type InvitationView,
} from "./invitations.ts";
export {
  actorOfSession,
  actorOfToken,
  openSession,
  SESSION_DAYS,
  signInByLink,
  signInByPassword,
  type SignedIn,
} from "./sign-in.ts";
