/** The time, taken from outside so that tests can set it. */
export type Clock = () => Date;
export const systemClock: Clock = () => new Date();
