export { addMember, makeSignInLink } from "./create.ts";
export {
  actorOfSession,
  actorOfToken,
  openSession,
  SESSION_DAYS,
  signInByLink,
  signInByPassword,
  type SignedIn,
} from "./sign-in.ts";
