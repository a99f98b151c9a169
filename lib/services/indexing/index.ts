export { followChanges, type Follower, type FollowProblem } from "./follow.ts";
