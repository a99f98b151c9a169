export { fieldChanges, type FieldChange } from "./changes.ts";
export { recordHistory, type HistoryEntry } from "./entries.ts";
export { readHistory, type HistoryOfRecord } from "./of-record.ts";
export { auditTrail, ListAudit, type AuditLine, type AuditTrail } from "./audit.ts";
