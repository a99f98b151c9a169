export { clubOverview, type ClubOverview } from "./club-overview.ts";
