-- CreateTable
CREATE TABLE "Member" (
    "id" UUID NOT NULL,
    "handle" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT,
    "passwordHash" TEXT,
    "role" TEXT NOT NULL,
    "about" TEXT NOT NULL DEFAULT '',
    "disabledAt" TIMESTAMPTZ(3),
    "invitationId" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Member_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Invitation" (
    "id" UUID NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "usesLeft" INTEGER NOT NULL,
    "createdById" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "revokedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Invitation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SignInLink" (
    "id" UUID NOT NULL,
    "memberId" UUID NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "usedAt" TIMESTAMPTZ(3),

    CONSTRAINT "SignInLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Session" (
    "id" UUID NOT NULL,
    "memberId" UUID NOT NULL,
    "device" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "lastSeenAt" TIMESTAMPTZ(3) NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "revokedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ApiToken" (
    "id" UUID NOT NULL,
    "memberId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "hint" TEXT NOT NULL,
    "scopes" TEXT[],
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "expiresAt" TIMESTAMPTZ(3),
    "lastUsedAt" TIMESTAMPTZ(3),
    "revokedAt" TIMESTAMPTZ(3),

    CONSTRAINT "ApiToken_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Instrument" (
    "id" UUID NOT NULL,
    "memberId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "accuracy" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Instrument_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Board" (
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "maker" TEXT NOT NULL DEFAULT '',
    "machine" TEXT NOT NULL DEFAULT '',
    "year" INTEGER,
    "summary" TEXT NOT NULL DEFAULT '',
    "notes" TEXT NOT NULL DEFAULT '',
    "width" DOUBLE PRECISION,
    "height" DOUBLE PRECISION,
    "hazards" TEXT[],
    "highestVoltage" DOUBLE PRECISION,
    "hiddenAt" TIMESTAMPTZ(3),
    "createdById" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Board_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "BoardRevision" (
    "id" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "notes" TEXT NOT NULL DEFAULT '',
    "position" INTEGER NOT NULL,

    CONSTRAINT "BoardRevision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Rail" (
    "id" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "nominal" DOUBLE PRECISION NOT NULL,
    "ac" BOOLEAN NOT NULL DEFAULT false,
    "tolerancePercent" DOUBLE PRECISION,
    "regulated" BOOLEAN NOT NULL DEFAULT true,
    "source" TEXT NOT NULL DEFAULT '',
    "notes" TEXT NOT NULL DEFAULT '',
    "position" INTEGER NOT NULL,

    CONSTRAINT "Rail_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Connector" (
    "id" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "designator" TEXT NOT NULL,
    "name" TEXT NOT NULL DEFAULT '',
    "kind" TEXT NOT NULL DEFAULT '',
    "position" INTEGER NOT NULL,

    CONSTRAINT "Connector_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ConnectorPin" (
    "id" UUID NOT NULL,
    "connectorId" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "name" TEXT NOT NULL DEFAULT '',
    "position" INTEGER NOT NULL,

    CONSTRAINT "ConnectorPin_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Placement" (
    "id" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "designator" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "chipId" UUID,
    "codeId" UUID,
    "value" TEXT NOT NULL DEFAULT '',
    "package" TEXT NOT NULL DEFAULT '',
    "socketed" BOOLEAN NOT NULL DEFAULT false,
    "sheet" TEXT NOT NULL DEFAULT '',
    "x" DOUBLE PRECISION,
    "y" DOUBLE PRECISION,
    "notes" TEXT NOT NULL DEFAULT '',
    "position" INTEGER NOT NULL,

    CONSTRAINT "Placement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Net" (
    "id" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "position" INTEGER NOT NULL,

    CONSTRAINT "Net_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "NetPin" (
    "id" UUID NOT NULL,
    "netId" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "designator" TEXT NOT NULL,
    "pin" TEXT NOT NULL,

    CONSTRAINT "NetPin_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "BoardDocument" (
    "id" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "attachmentId" UUID NOT NULL,
    "title" TEXT NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'schematic',
    "sheets" JSONB NOT NULL DEFAULT '[]',
    "rights" TEXT NOT NULL DEFAULT 'unknown',
    "createdById" UUID,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "BoardDocument_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SelfTestCode" (
    "id" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "form" TEXT NOT NULL,
    "signal" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "suspects" TEXT[],
    "position" INTEGER NOT NULL,

    CONSTRAINT "SelfTestCode_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "BoardCaution" (
    "id" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "at" TEXT NOT NULL DEFAULT '',
    "text" TEXT NOT NULL,
    "position" INTEGER NOT NULL,

    CONSTRAINT "BoardCaution_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "BoardCopy" (
    "id" UUID NOT NULL,
    "boardId" UUID NOT NULL,
    "revisionId" UUID,
    "ownerId" UUID,
    "tag" TEXT NOT NULL,
    "serial" TEXT NOT NULL DEFAULT '',
    "modifications" TEXT NOT NULL DEFAULT '',
    "jumpers" TEXT NOT NULL DEFAULT '',
    "contents" TEXT NOT NULL DEFAULT '',
    "works" BOOLEAN,
    "notes" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "BoardCopy_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Chip" (
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "function" TEXT NOT NULL DEFAULT '',
    "technology" TEXT NOT NULL,
    "contents" TEXT NOT NULL,
    "contentsRef" TEXT NOT NULL DEFAULT '',
    "notes" TEXT NOT NULL DEFAULT '',
    "dataSheet" TEXT NOT NULL DEFAULT '',
    "source" TEXT NOT NULL DEFAULT '',
    "keys" TEXT[],
    "hiddenAt" TIMESTAMPTZ(3),
    "createdById" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Chip_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ChipPackage" (
    "id" UUID NOT NULL,
    "chipId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "style" TEXT NOT NULL,
    "pinCount" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,

    CONSTRAINT "ChipPackage_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ChipPin" (
    "id" UUID NOT NULL,
    "packageId" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "type" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "activeLow" BOOLEAN NOT NULL DEFAULT false,
    "supply" DOUBLE PRECISION,
    "unit" INTEGER NOT NULL DEFAULT 1,
    "position" INTEGER NOT NULL,

    CONSTRAINT "ChipPin_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "House" (
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "notes" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "House_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "HousePattern" (
    "id" UUID NOT NULL,
    "houseId" UUID NOT NULL,
    "pattern" TEXT NOT NULL,
    "example" TEXT NOT NULL,
    "meaning" TEXT NOT NULL DEFAULT '',
    "position" INTEGER NOT NULL,

    CONSTRAINT "HousePattern_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PartCode" (
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "normal" TEXT NOT NULL,
    "keys" TEXT[],
    "houseId" UUID,
    "chipId" UUID,
    "notes" TEXT NOT NULL DEFAULT '',
    "hiddenAt" TIMESTAMPTZ(3),
    "createdById" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "PartCode_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CodeSighting" (
    "id" UUID NOT NULL,
    "codeId" UUID NOT NULL,
    "boardId" UUID,
    "at" TEXT NOT NULL DEFAULT '',
    "dateCode" TEXT NOT NULL DEFAULT '',
    "attachmentId" UUID,
    "memberId" UUID,
    "note" TEXT NOT NULL DEFAULT '',
    "seenAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CodeSighting_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Claim" (
    "id" UUID NOT NULL,
    "fromId" UUID NOT NULL,
    "toId" UUID NOT NULL,
    "grade" TEXT NOT NULL,
    "bothWays" BOOLEAN NOT NULL DEFAULT false,
    "conditions" TEXT[],
    "note" TEXT NOT NULL DEFAULT '',
    "createdById" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Claim_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Evidence" (
    "id" UUID NOT NULL,
    "claimId" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "memberId" UUID,
    "caseId" UUID,
    "provedElsewhere" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "retractedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Evidence_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Symptom" (
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "synonyms" TEXT[],
    "createdById" UUID,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Symptom_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "FaultCase" (
    "id" UUID NOT NULL,
    "number" SERIAL NOT NULL,
    "title" TEXT NOT NULL,
    "boardId" UUID,
    "revisionId" UUID,
    "copyId" UUID,
    "authorId" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "outcome" TEXT NOT NULL,
    "lesson" TEXT NOT NULL DEFAULT '',
    "symptomText" TEXT NOT NULL DEFAULT '',
    "reproduced" TEXT NOT NULL DEFAULT '',
    "story" TEXT NOT NULL DEFAULT '',
    "asksHelp" TEXT NOT NULL DEFAULT '',
    "openedFromId" UUID,
    "openedAt" TIMESTAMPTZ(3) NOT NULL,
    "publishedAt" TIMESTAMPTZ(3),
    "closedAt" TIMESTAMPTZ(3),
    "features" INTEGER[],
    "featuresVersion" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "FaultCase_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CaseSymptom" (
    "caseId" UUID NOT NULL,
    "symptomId" UUID NOT NULL,
    "position" INTEGER NOT NULL,

    CONSTRAINT "CaseSymptom_pkey" PRIMARY KEY ("caseId","symptomId")
);

-- CreateTable
CREATE TABLE "Check" (
    "id" UUID NOT NULL,
    "caseId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "placeKnown" BOOLEAN NOT NULL DEFAULT true,
    "to" TEXT NOT NULL DEFAULT '',
    "lead" TEXT,
    "when" TEXT NOT NULL DEFAULT '',
    "power" TEXT NOT NULL,
    "what" TEXT,
    "outcome" TEXT,
    "expected" TEXT NOT NULL DEFAULT '',
    "expectedFrom" TEXT NOT NULL DEFAULT '',
    "measured" TEXT NOT NULL DEFAULT '',
    "value" DOUBLE PRECISION,
    "unit" TEXT,
    "reading" TEXT,
    "unreadable" TEXT NOT NULL DEFAULT '',
    "instrumentId" UUID,
    "accuracy" JSONB,
    "computedVerdict" TEXT NOT NULL,
    "chosenVerdict" TEXT,
    "chosenReason" TEXT NOT NULL DEFAULT '',
    "because" TEXT NOT NULL DEFAULT '',
    "direction" TEXT,
    "size" TEXT,
    "judgeVersion" INTEGER NOT NULL,
    "outdated" BOOLEAN NOT NULL DEFAULT false,
    "note" TEXT NOT NULL DEFAULT '',
    "memberId" UUID,
    "takenAt" TIMESTAMPTZ(3) NOT NULL,
    "repeatsId" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Check_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Cause" (
    "id" UUID NOT NULL,
    "caseId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "at" TEXT NOT NULL DEFAULT '',
    "chipId" UUID,
    "codeId" UUID,
    "failure" TEXT NOT NULL,
    "description" TEXT NOT NULL DEFAULT '',
    "memberId" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Cause_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CauseCheck" (
    "causeId" UUID NOT NULL,
    "checkId" UUID NOT NULL,

    CONSTRAINT "CauseCheck_pkey" PRIMARY KEY ("causeId","checkId")
);

-- CreateTable
CREATE TABLE "Cure" (
    "id" UUID NOT NULL,
    "causeId" UUID NOT NULL,
    "action" TEXT NOT NULL,
    "description" TEXT NOT NULL DEFAULT '',
    "fittedId" UUID,
    "fittedText" TEXT NOT NULL DEFAULT '',
    "fromWhere" TEXT NOT NULL DEFAULT '',
    "spareId" UUID,

    CONSTRAINT "Cure_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Proof" (
    "id" UUID NOT NULL,
    "caseId" UUID NOT NULL,
    "causeId" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "soakMinutes" INTEGER,
    "note" TEXT NOT NULL DEFAULT '',
    "memberId" UUID,
    "provedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Proof_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Confirmation" (
    "id" UUID NOT NULL,
    "caseId" UUID NOT NULL,
    "causeId" UUID,
    "memberId" UUID NOT NULL,
    "helped" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "linkedCaseId" UUID,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Confirmation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CautionTick" (
    "caseId" UUID NOT NULL,
    "caution" TEXT NOT NULL,
    "memberId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CautionTick_pkey" PRIMARY KEY ("caseId","caution","memberId")
);

-- CreateTable
CREATE TABLE "Comment" (
    "id" UUID NOT NULL,
    "recordKind" TEXT NOT NULL,
    "recordId" UUID NOT NULL,
    "checkId" UUID,
    "authorId" UUID,
    "body" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,
    "deletedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Comment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Attachment" (
    "id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "mediaType" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "byteSize" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "width" INTEGER,
    "height" INTEGER,
    "uploadedById" UUID,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Attachment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AttachmentUse" (
    "id" UUID NOT NULL,
    "attachmentId" UUID NOT NULL,
    "recordKind" TEXT NOT NULL,
    "recordId" UUID NOT NULL,
    "checkId" UUID,
    "caption" TEXT NOT NULL DEFAULT '',
    "position" INTEGER NOT NULL,
    "markers" JSONB NOT NULL DEFAULT '[]',
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "AttachmentUse_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RecordRevision" (
    "id" UUID NOT NULL,
    "recordKind" TEXT NOT NULL,
    "recordId" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "did" TEXT NOT NULL,
    "memberId" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "snapshot" JSONB NOT NULL,

    CONSTRAINT "RecordRevision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Spare" (
    "id" UUID NOT NULL,
    "memberId" UUID NOT NULL,
    "direction" TEXT NOT NULL,
    "codeId" UUID,
    "chipId" UUID,
    "boardId" UUID,
    "quantity" INTEGER NOT NULL DEFAULT 1,
    "condition" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "visibility" TEXT NOT NULL DEFAULT 'members',
    "doneAt" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "updatedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Spare_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ImportJob" (
    "id" UUID NOT NULL,
    "memberId" UUID NOT NULL,
    "format" TEXT NOT NULL,
    "fileName" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "plan" JSONB NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "committedAt" TIMESTAMPTZ(3),

    CONSTRAINT "ImportJob_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ChangeLog" (
    "seq" BIGSERIAL NOT NULL,
    "recordKind" TEXT NOT NULL,
    "recordId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ChangeLog_pkey" PRIMARY KEY ("seq")
);

-- CreateTable
CREATE TABLE "IndexPosition" (
    "name" TEXT NOT NULL,
    "seq" BIGINT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "IndexPosition_pkey" PRIMARY KEY ("name")
);

-- CreateTable
CREATE TABLE "AuditEntry" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "memberId" UUID,
    "action" TEXT NOT NULL,
    "recordKind" TEXT,
    "recordId" UUID,
    "address" TEXT,
    "detail" JSONB NOT NULL DEFAULT '{}',

    CONSTRAINT "AuditEntry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Setting" (
    "name" TEXT NOT NULL,
    "value" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Setting_pkey" PRIMARY KEY ("name")
);

-- CreateTable
CREATE TABLE "rate_limit" (
    "key" VARCHAR(255) NOT NULL,
    "points" INTEGER NOT NULL DEFAULT 0,
    "expire" BIGINT,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("key")
);

-- CreateIndex
CREATE UNIQUE INDEX "Member_handle_key" ON "Member"("handle");

-- CreateIndex
CREATE UNIQUE INDEX "Member_email_key" ON "Member"("email");

-- CreateIndex
CREATE UNIQUE INDEX "Invitation_tokenHash_key" ON "Invitation"("tokenHash");

-- CreateIndex
CREATE UNIQUE INDEX "SignInLink_tokenHash_key" ON "SignInLink"("tokenHash");

-- CreateIndex
CREATE INDEX "Session_memberId_createdAt_idx" ON "Session"("memberId", "createdAt");

-- CreateIndex
CREATE UNIQUE INDEX "ApiToken_tokenHash_key" ON "ApiToken"("tokenHash");

-- CreateIndex
CREATE INDEX "ApiToken_memberId_idx" ON "ApiToken"("memberId");

-- CreateIndex
CREATE INDEX "Instrument_memberId_idx" ON "Instrument"("memberId");

-- CreateIndex
CREATE UNIQUE INDEX "Board_slug_key" ON "Board"("slug");

-- CreateIndex
CREATE INDEX "Board_kind_name_idx" ON "Board"("kind", "name");

-- CreateIndex
CREATE UNIQUE INDEX "BoardRevision_boardId_name_key" ON "BoardRevision"("boardId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Rail_boardId_name_key" ON "Rail"("boardId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Connector_boardId_designator_key" ON "Connector"("boardId", "designator");

-- CreateIndex
CREATE UNIQUE INDEX "ConnectorPin_connectorId_number_key" ON "ConnectorPin"("connectorId", "number");

-- CreateIndex
CREATE INDEX "Placement_chipId_idx" ON "Placement"("chipId");

-- CreateIndex
CREATE INDEX "Placement_codeId_idx" ON "Placement"("codeId");

-- CreateIndex
CREATE UNIQUE INDEX "Placement_boardId_designator_key" ON "Placement"("boardId", "designator");

-- CreateIndex
CREATE UNIQUE INDEX "Net_boardId_name_key" ON "Net"("boardId", "name");

-- CreateIndex
CREATE INDEX "NetPin_netId_idx" ON "NetPin"("netId");

-- CreateIndex
CREATE UNIQUE INDEX "NetPin_boardId_designator_pin_key" ON "NetPin"("boardId", "designator", "pin");

-- CreateIndex
CREATE INDEX "BoardDocument_boardId_idx" ON "BoardDocument"("boardId");

-- CreateIndex
CREATE INDEX "BoardDocument_attachmentId_idx" ON "BoardDocument"("attachmentId");

-- CreateIndex
CREATE INDEX "SelfTestCode_boardId_idx" ON "SelfTestCode"("boardId");

-- CreateIndex
CREATE INDEX "BoardCaution_boardId_idx" ON "BoardCaution"("boardId");

-- CreateIndex
CREATE INDEX "BoardCopy_ownerId_idx" ON "BoardCopy"("ownerId");

-- CreateIndex
CREATE UNIQUE INDEX "BoardCopy_boardId_tag_key" ON "BoardCopy"("boardId", "tag");

-- CreateIndex
CREATE UNIQUE INDEX "Chip_slug_key" ON "Chip"("slug");

-- CreateIndex
CREATE INDEX "Chip_keys_idx" ON "Chip" USING GIN ("keys");

-- CreateIndex
CREATE INDEX "Chip_name_idx" ON "Chip"("name");

-- CreateIndex
CREATE UNIQUE INDEX "ChipPackage_chipId_name_key" ON "ChipPackage"("chipId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "ChipPin_packageId_number_key" ON "ChipPin"("packageId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "House_slug_key" ON "House"("slug");

-- CreateIndex
CREATE UNIQUE INDEX "HousePattern_houseId_pattern_key" ON "HousePattern"("houseId", "pattern");

-- CreateIndex
CREATE INDEX "PartCode_keys_idx" ON "PartCode" USING GIN ("keys");

-- CreateIndex
CREATE INDEX "PartCode_normal_idx" ON "PartCode"("normal");

-- CreateIndex
CREATE INDEX "PartCode_chipId_idx" ON "PartCode"("chipId");

-- CreateIndex
CREATE INDEX "CodeSighting_codeId_idx" ON "CodeSighting"("codeId");

-- CreateIndex
CREATE INDEX "CodeSighting_boardId_idx" ON "CodeSighting"("boardId");

-- CreateIndex
CREATE INDEX "CodeSighting_attachmentId_idx" ON "CodeSighting"("attachmentId");

-- CreateIndex
CREATE INDEX "Claim_toId_idx" ON "Claim"("toId");

-- CreateIndex
CREATE UNIQUE INDEX "Claim_fromId_toId_grade_key" ON "Claim"("fromId", "toId", "grade");

-- CreateIndex
CREATE INDEX "Evidence_claimId_idx" ON "Evidence"("claimId");

-- CreateIndex
CREATE INDEX "Evidence_caseId_idx" ON "Evidence"("caseId");

-- CreateIndex
CREATE UNIQUE INDEX "Symptom_slug_key" ON "Symptom"("slug");

-- CreateIndex
CREATE UNIQUE INDEX "FaultCase_number_key" ON "FaultCase"("number");

-- CreateIndex
CREATE INDEX "FaultCase_boardId_openedAt_idx" ON "FaultCase"("boardId", "openedAt");

-- CreateIndex
CREATE INDEX "FaultCase_authorId_openedAt_idx" ON "FaultCase"("authorId", "openedAt");

-- CreateIndex
CREATE INDEX "FaultCase_state_outcome_openedAt_idx" ON "FaultCase"("state", "outcome", "openedAt");

-- CreateIndex
CREATE INDEX "FaultCase_openedFromId_idx" ON "FaultCase"("openedFromId");

-- CreateIndex
CREATE INDEX "CaseSymptom_symptomId_idx" ON "CaseSymptom"("symptomId");

-- CreateIndex
CREATE INDEX "Check_caseId_position_idx" ON "Check"("caseId", "position");

-- CreateIndex
CREATE INDEX "Check_repeatsId_idx" ON "Check"("repeatsId");

-- CreateIndex
CREATE INDEX "Cause_caseId_position_idx" ON "Cause"("caseId", "position");

-- CreateIndex
CREATE INDEX "Cause_chipId_idx" ON "Cause"("chipId");

-- CreateIndex
CREATE INDEX "Cause_codeId_idx" ON "Cause"("codeId");

-- CreateIndex
CREATE INDEX "CauseCheck_checkId_idx" ON "CauseCheck"("checkId");

-- CreateIndex
CREATE UNIQUE INDEX "Cure_causeId_key" ON "Cure"("causeId");

-- CreateIndex
CREATE INDEX "Cure_fittedId_idx" ON "Cure"("fittedId");

-- CreateIndex
CREATE INDEX "Cure_spareId_idx" ON "Cure"("spareId");

-- CreateIndex
CREATE INDEX "Proof_caseId_idx" ON "Proof"("caseId");

-- CreateIndex
CREATE INDEX "Proof_causeId_idx" ON "Proof"("causeId");

-- CreateIndex
CREATE INDEX "Confirmation_causeId_idx" ON "Confirmation"("causeId");

-- CreateIndex
CREATE INDEX "Confirmation_linkedCaseId_idx" ON "Confirmation"("linkedCaseId");

-- CreateIndex
CREATE UNIQUE INDEX "Confirmation_caseId_memberId_key" ON "Confirmation"("caseId", "memberId");

-- CreateIndex
CREATE INDEX "Comment_recordKind_recordId_createdAt_idx" ON "Comment"("recordKind", "recordId", "createdAt");

-- CreateIndex
CREATE INDEX "Attachment_hash_idx" ON "Attachment"("hash");

-- CreateIndex
CREATE INDEX "AttachmentUse_recordKind_recordId_position_idx" ON "AttachmentUse"("recordKind", "recordId", "position");

-- CreateIndex
CREATE INDEX "AttachmentUse_attachmentId_idx" ON "AttachmentUse"("attachmentId");

-- CreateIndex
CREATE INDEX "RecordRevision_recordKind_recordId_at_idx" ON "RecordRevision"("recordKind", "recordId", "at");

-- CreateIndex
CREATE INDEX "RecordRevision_memberId_at_idx" ON "RecordRevision"("memberId", "at");

-- CreateIndex
CREATE INDEX "Spare_memberId_idx" ON "Spare"("memberId");

-- CreateIndex
CREATE INDEX "Spare_codeId_idx" ON "Spare"("codeId");

-- CreateIndex
CREATE INDEX "Spare_chipId_idx" ON "Spare"("chipId");

-- CreateIndex
CREATE INDEX "Spare_boardId_idx" ON "Spare"("boardId");

-- CreateIndex
CREATE INDEX "ImportJob_memberId_createdAt_idx" ON "ImportJob"("memberId", "createdAt");

-- CreateIndex
CREATE INDEX "AuditEntry_at_idx" ON "AuditEntry"("at");

-- CreateIndex
CREATE INDEX "AuditEntry_recordKind_recordId_at_idx" ON "AuditEntry"("recordKind", "recordId", "at");

-- AddForeignKey
ALTER TABLE "Member" ADD CONSTRAINT "Member_invitationId_fkey" FOREIGN KEY ("invitationId") REFERENCES "Invitation"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Invitation" ADD CONSTRAINT "Invitation_createdById_fkey" FOREIGN KEY ("createdById") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SignInLink" ADD CONSTRAINT "SignInLink_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Session" ADD CONSTRAINT "Session_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ApiToken" ADD CONSTRAINT "ApiToken_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Instrument" ADD CONSTRAINT "Instrument_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BoardRevision" ADD CONSTRAINT "BoardRevision_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Rail" ADD CONSTRAINT "Rail_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Connector" ADD CONSTRAINT "Connector_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ConnectorPin" ADD CONSTRAINT "ConnectorPin_connectorId_fkey" FOREIGN KEY ("connectorId") REFERENCES "Connector"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Placement" ADD CONSTRAINT "Placement_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Placement" ADD CONSTRAINT "Placement_chipId_fkey" FOREIGN KEY ("chipId") REFERENCES "Chip"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Placement" ADD CONSTRAINT "Placement_codeId_fkey" FOREIGN KEY ("codeId") REFERENCES "PartCode"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Net" ADD CONSTRAINT "Net_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "NetPin" ADD CONSTRAINT "NetPin_netId_fkey" FOREIGN KEY ("netId") REFERENCES "Net"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BoardDocument" ADD CONSTRAINT "BoardDocument_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BoardDocument" ADD CONSTRAINT "BoardDocument_attachmentId_fkey" FOREIGN KEY ("attachmentId") REFERENCES "Attachment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SelfTestCode" ADD CONSTRAINT "SelfTestCode_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BoardCaution" ADD CONSTRAINT "BoardCaution_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BoardCopy" ADD CONSTRAINT "BoardCopy_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BoardCopy" ADD CONSTRAINT "BoardCopy_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "BoardRevision"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BoardCopy" ADD CONSTRAINT "BoardCopy_ownerId_fkey" FOREIGN KEY ("ownerId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChipPackage" ADD CONSTRAINT "ChipPackage_chipId_fkey" FOREIGN KEY ("chipId") REFERENCES "Chip"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChipPin" ADD CONSTRAINT "ChipPin_packageId_fkey" FOREIGN KEY ("packageId") REFERENCES "ChipPackage"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HousePattern" ADD CONSTRAINT "HousePattern_houseId_fkey" FOREIGN KEY ("houseId") REFERENCES "House"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartCode" ADD CONSTRAINT "PartCode_houseId_fkey" FOREIGN KEY ("houseId") REFERENCES "House"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartCode" ADD CONSTRAINT "PartCode_chipId_fkey" FOREIGN KEY ("chipId") REFERENCES "Chip"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CodeSighting" ADD CONSTRAINT "CodeSighting_codeId_fkey" FOREIGN KEY ("codeId") REFERENCES "PartCode"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CodeSighting" ADD CONSTRAINT "CodeSighting_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CodeSighting" ADD CONSTRAINT "CodeSighting_attachmentId_fkey" FOREIGN KEY ("attachmentId") REFERENCES "Attachment"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CodeSighting" ADD CONSTRAINT "CodeSighting_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Claim" ADD CONSTRAINT "Claim_fromId_fkey" FOREIGN KEY ("fromId") REFERENCES "PartCode"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Claim" ADD CONSTRAINT "Claim_toId_fkey" FOREIGN KEY ("toId") REFERENCES "PartCode"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Claim" ADD CONSTRAINT "Claim_createdById_fkey" FOREIGN KEY ("createdById") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Evidence" ADD CONSTRAINT "Evidence_claimId_fkey" FOREIGN KEY ("claimId") REFERENCES "Claim"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Evidence" ADD CONSTRAINT "Evidence_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Evidence" ADD CONSTRAINT "Evidence_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "FaultCase"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FaultCase" ADD CONSTRAINT "FaultCase_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FaultCase" ADD CONSTRAINT "FaultCase_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "BoardRevision"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FaultCase" ADD CONSTRAINT "FaultCase_copyId_fkey" FOREIGN KEY ("copyId") REFERENCES "BoardCopy"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FaultCase" ADD CONSTRAINT "FaultCase_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FaultCase" ADD CONSTRAINT "FaultCase_openedFromId_fkey" FOREIGN KEY ("openedFromId") REFERENCES "FaultCase"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CaseSymptom" ADD CONSTRAINT "CaseSymptom_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "FaultCase"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CaseSymptom" ADD CONSTRAINT "CaseSymptom_symptomId_fkey" FOREIGN KEY ("symptomId") REFERENCES "Symptom"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Check" ADD CONSTRAINT "Check_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "FaultCase"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Check" ADD CONSTRAINT "Check_instrumentId_fkey" FOREIGN KEY ("instrumentId") REFERENCES "Instrument"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Check" ADD CONSTRAINT "Check_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Check" ADD CONSTRAINT "Check_repeatsId_fkey" FOREIGN KEY ("repeatsId") REFERENCES "Check"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Cause" ADD CONSTRAINT "Cause_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "FaultCase"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Cause" ADD CONSTRAINT "Cause_chipId_fkey" FOREIGN KEY ("chipId") REFERENCES "Chip"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Cause" ADD CONSTRAINT "Cause_codeId_fkey" FOREIGN KEY ("codeId") REFERENCES "PartCode"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Cause" ADD CONSTRAINT "Cause_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CauseCheck" ADD CONSTRAINT "CauseCheck_causeId_fkey" FOREIGN KEY ("causeId") REFERENCES "Cause"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CauseCheck" ADD CONSTRAINT "CauseCheck_checkId_fkey" FOREIGN KEY ("checkId") REFERENCES "Check"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Cure" ADD CONSTRAINT "Cure_causeId_fkey" FOREIGN KEY ("causeId") REFERENCES "Cause"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Cure" ADD CONSTRAINT "Cure_fittedId_fkey" FOREIGN KEY ("fittedId") REFERENCES "PartCode"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Cure" ADD CONSTRAINT "Cure_spareId_fkey" FOREIGN KEY ("spareId") REFERENCES "Spare"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Proof" ADD CONSTRAINT "Proof_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "FaultCase"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Proof" ADD CONSTRAINT "Proof_causeId_fkey" FOREIGN KEY ("causeId") REFERENCES "Cause"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Proof" ADD CONSTRAINT "Proof_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Confirmation" ADD CONSTRAINT "Confirmation_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "FaultCase"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Confirmation" ADD CONSTRAINT "Confirmation_causeId_fkey" FOREIGN KEY ("causeId") REFERENCES "Cause"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Confirmation" ADD CONSTRAINT "Confirmation_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Confirmation" ADD CONSTRAINT "Confirmation_linkedCaseId_fkey" FOREIGN KEY ("linkedCaseId") REFERENCES "FaultCase"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CautionTick" ADD CONSTRAINT "CautionTick_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "FaultCase"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CautionTick" ADD CONSTRAINT "CautionTick_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Comment" ADD CONSTRAINT "Comment_authorId_fkey" FOREIGN KEY ("authorId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Attachment" ADD CONSTRAINT "Attachment_uploadedById_fkey" FOREIGN KEY ("uploadedById") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AttachmentUse" ADD CONSTRAINT "AttachmentUse_attachmentId_fkey" FOREIGN KEY ("attachmentId") REFERENCES "Attachment"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RecordRevision" ADD CONSTRAINT "RecordRevision_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Spare" ADD CONSTRAINT "Spare_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Spare" ADD CONSTRAINT "Spare_codeId_fkey" FOREIGN KEY ("codeId") REFERENCES "PartCode"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Spare" ADD CONSTRAINT "Spare_chipId_fkey" FOREIGN KEY ("chipId") REFERENCES "Chip"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Spare" ADD CONSTRAINT "Spare_boardId_fkey" FOREIGN KEY ("boardId") REFERENCES "Board"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ImportJob" ADD CONSTRAINT "ImportJob_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AuditEntry" ADD CONSTRAINT "AuditEntry_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- Closed sets (lib/core/shared/vocabulary.ts) and what must always hold.
ALTER TABLE "Member" ADD CONSTRAINT "Member_role_known" CHECK ("role" IN ('member', 'reviewer', 'steward'));
ALTER TABLE "Invitation" ADD CONSTRAINT "Invitation_role_known" CHECK ("role" IN ('member', 'reviewer', 'steward'));
ALTER TABLE "Member" ADD CONSTRAINT "Member_email_lower" CHECK ("email" = lower("email"));
ALTER TABLE "Invitation" ADD CONSTRAINT "Invitation_usesLeft_positive" CHECK ("usesLeft" >= 0);
ALTER TABLE "ApiToken" ADD CONSTRAINT "ApiToken_scopes_known" CHECK ("scopes" <@ ARRAY['read', 'write', 'review', 'import']);
ALTER TABLE "Board" ADD CONSTRAINT "Board_kind_known" CHECK ("kind" IN ('home-computer', 'terminal', 'synthesizer-voice', 'arcade', 'pinball-driver', 'bench-instrument', 'other'));
ALTER TABLE "Board" ADD CONSTRAINT "Board_hazards_known" CHECK ("hazards" <@ ARRAY['mains', 'picture-tube', 'high-voltage', 'stored-charge', 'hot-parts', 'battery', 'lithium-cell', 'ultraviolet']);
ALTER TABLE "Board" ADD CONSTRAINT "Board_slug_form" CHECK ("slug" ~ '^[a-z0-9]+(-[a-z0-9]+)*$');
ALTER TABLE "Chip" ADD CONSTRAINT "Chip_slug_form" CHECK ("slug" ~ '^[a-z0-9]+(-[a-z0-9]+)*$');
ALTER TABLE "Rail" ADD CONSTRAINT "Rail_tolerance_positive" CHECK ("tolerancePercent" IS NULL OR "tolerancePercent" > 0);
ALTER TABLE "Placement" ADD CONSTRAINT "Placement_kind_known" CHECK ("kind" IN ('chip', 'transistor', 'diode', 'resistor', 'resistor-pack', 'capacitor', 'inductor', 'crystal', 'connector', 'switch', 'fuse', 'relay', 'transformer', 'battery', 'jumper', 'test-point', 'other'));
ALTER TABLE "Net" ADD CONSTRAINT "Net_role_known" CHECK ("role" IN ('power', 'ground', 'clock', 'reset', 'select', 'control', 'address', 'data', 'signal', 'unknown'));
ALTER TABLE "BoardDocument" ADD CONSTRAINT "BoardDocument_rights_known" CHECK ("rights" IN ('free', 'own', 'unknown'));
ALTER TABLE "BoardDocument" ADD CONSTRAINT "BoardDocument_kind_known" CHECK ("kind" IN ('schematic', 'manual', 'layout', 'other'));
ALTER TABLE "SelfTestCode" ADD CONSTRAINT "SelfTestCode_form_known" CHECK ("form" IN ('beeps', 'flashes', 'message'));
ALTER TABLE "Chip" ADD CONSTRAINT "Chip_technology_known" CHECK ("technology" IN ('TTL', 'LS', 'ALS', 'S', 'F', 'HC', 'HCT', 'CMOS-4000', 'CMOS', 'NMOS', 'PMOS', 'ECL', 'bipolar', 'analog', 'unknown'));
ALTER TABLE "Chip" ADD CONSTRAINT "Chip_contents_known" CHECK ("contents" IN ('none', 'mask-rom', 'prom', 'eprom', 'eeprom', 'pal', 'gate-array', 'single-chip-processor', 'unknown'));
ALTER TABLE "ChipPackage" ADD CONSTRAINT "ChipPackage_style_known" CHECK ("style" IN ('DIP', 'PLCC', 'SOIC', 'QFP', 'SIP', 'TO', 'other'));
ALTER TABLE "ChipPackage" ADD CONSTRAINT "ChipPackage_pinCount_positive" CHECK ("pinCount" > 0);
ALTER TABLE "ChipPin" ADD CONSTRAINT "ChipPin_type_known" CHECK ("type" IN ('input', 'output', 'bidirectional', 'three-state', 'open-collector', 'open-emitter', 'passive', 'power-in', 'power-out', 'no-connect', 'do-not-connect', 'unspecified'));
ALTER TABLE "ChipPin" ADD CONSTRAINT "ChipPin_role_known" CHECK ("role" IN ('supply', 'ground', 'clock', 'reset', 'select', 'enable', 'control', 'interrupt', 'address', 'data', 'input', 'output', 'oscillator', 'analog', 'unused', 'unknown'));
ALTER TABLE "Claim" ADD CONSTRAINT "Claim_grade_known" CHECK ("grade" IN ('same-part', 'drop-in', 'conditional', 'adapter', 'not-a-fit'));
ALTER TABLE "Claim" ADD CONSTRAINT "Claim_two_codes" CHECK ("fromId" <> "toId");
ALTER TABLE "Evidence" ADD CONSTRAINT "Evidence_kind_known" CHECK ("kind" IN ('data-sheet', 'pin-table', 'electrical', 'fitted-worked', 'fitted-failed', 'told'));
ALTER TABLE "Evidence" ADD CONSTRAINT "Evidence_provedElsewhere_known" CHECK ("provedElsewhere" IN ('yes', 'not-known', 'found-bad'));
ALTER TABLE "FaultCase" ADD CONSTRAINT "FaultCase_state_known" CHECK ("state" IN ('draft', 'published', 'hidden'));
ALTER TABLE "FaultCase" ADD CONSTRAINT "FaultCase_outcome_known" CHECK ("outcome" IN ('open', 'waiting', 'cured', 'cured-cause-unknown', 'works-not-proved', 'no-fault-found', 'given-up'));
ALTER TABLE "FaultCase" ADD CONSTRAINT "FaultCase_published_when" CHECK ("state" <> 'published' OR "publishedAt" IS NOT NULL);
ALTER TABLE "Check" ADD CONSTRAINT "Check_kind_known" CHECK ("kind" IN ('visual', 'self-test', 'continuity', 'resistance', 'diode', 'dc-voltage', 'ac-voltage', 'current', 'ripple', 'frequency', 'level', 'activity', 'capacitance', 'esr', 'temperature', 'waveform', 'contents', 'node-signature', 'trial'));
ALTER TABLE "Check" ADD CONSTRAINT "Check_power_known" CHECK ("power" IN ('off', 'on'));
ALTER TABLE "Check" ADD CONSTRAINT "Check_lead_known" CHECK ("lead" IN ('red', 'black'));
ALTER TABLE "Check" ADD CONSTRAINT "Check_what_known" CHECK ("what" IN ('swap', 'reseat', 'piggy-back', 'lift-pin', 'cool', 'heat', 'press', 'clean'));
ALTER TABLE "Check" ADD CONSTRAINT "Check_outcome_known" CHECK ("outcome" IN ('changed', 'no-change', 'cured'));
ALTER TABLE "Check" ADD CONSTRAINT "Check_trial_names_what" CHECK (("kind" = 'trial') = ("what" IS NOT NULL));
ALTER TABLE "Check" ADD CONSTRAINT "Check_computedVerdict_known" CHECK ("computedVerdict" IN ('in-spec', 'out-of-spec', 'inconclusive', 'noted', 'not-taken'));
ALTER TABLE "Check" ADD CONSTRAINT "Check_chosenVerdict_known" CHECK ("chosenVerdict" IN ('in-spec', 'out-of-spec', 'inconclusive', 'noted', 'not-taken'));
ALTER TABLE "Check" ADD CONSTRAINT "Check_chosen_with_reason" CHECK ("chosenVerdict" IS NULL OR "chosenReason" <> '');
ALTER TABLE "Check" ADD CONSTRAINT "Check_direction_known" CHECK ("direction" IN ('low', 'high'));
ALTER TABLE "Check" ADD CONSTRAINT "Check_size_known" CHECK ("size" IN ('marginal', 'clear', 'absent'));
ALTER TABLE "Cause" ADD CONSTRAINT "Cause_failure_known" CHECK ("failure" IN ('dead', 'outputs-dead', 'output-stuck-high', 'output-stuck-low', 'input-loading', 'internal-short', 'open', 'leaky', 'out-of-value', 'contents-lost', 'intermittent', 'marginal-timing', 'cold-joint', 'broken-trace', 'bad-socket', 'dirty-contact', 'shorted-trace', 'corrosion', 'wrong-part', 'earlier-repair', 'setting', 'other'));
ALTER TABLE "Cure" ADD CONSTRAINT "Cure_action_known" CHECK ("action" IN ('replaced', 'reseated', 'resoldered', 'trace-repaired', 'cleaned', 'adjusted', 'reprogrammed', 'removed', 'undone', 'other'));
ALTER TABLE "Proof" ADD CONSTRAINT "Proof_kind_known" CHECK ("kind" IN ('checks-repeated', 'soak'));
ALTER TABLE "Proof" ADD CONSTRAINT "Proof_soak_has_minutes" CHECK ("kind" <> 'soak' OR "soakMinutes" > 0);
ALTER TABLE "Confirmation" ADD CONSTRAINT "Confirmation_not_own_case" CHECK ("linkedCaseId" IS NULL OR "linkedCaseId" <> "caseId");
ALTER TABLE "Comment" ADD CONSTRAINT "Comment_recordKind_known" CHECK ("recordKind" IN ('case', 'board', 'chip', 'code'));
ALTER TABLE "Attachment" ADD CONSTRAINT "Attachment_kind_known" CHECK ("kind" IN ('photo', 'file'));
ALTER TABLE "Attachment" ADD CONSTRAINT "Attachment_hash_form" CHECK ("hash" ~ '^[0-9a-f]{64}$');
ALTER TABLE "Attachment" ADD CONSTRAINT "Attachment_byteSize_positive" CHECK ("byteSize" > 0);
ALTER TABLE "Spare" ADD CONSTRAINT "Spare_direction_known" CHECK ("direction" IN ('offer', 'want'));
ALTER TABLE "Spare" ADD CONSTRAINT "Spare_visibility_known" CHECK ("visibility" IN ('public', 'members'));
ALTER TABLE "Spare" ADD CONSTRAINT "Spare_quantity_positive" CHECK ("quantity" > 0);
ALTER TABLE "Spare" ADD CONSTRAINT "Spare_names_something" CHECK ("codeId" IS NOT NULL OR "chipId" IS NOT NULL OR "boardId" IS NOT NULL OR "note" <> '');
ALTER TABLE "ImportJob" ADD CONSTRAINT "ImportJob_state_known" CHECK ("state" IN ('planned', 'committed', 'refused'));

-- One print of one house is one code; without a house the print alone.
CREATE UNIQUE INDEX "PartCode_print" ON "PartCode" (upper("code"), coalesce("houseId", '00000000-0000-0000-0000-000000000000'::uuid));

-- A case counts as cured only with a proof. Checked at commit, so that case, cause and proof may be written in any order.
CREATE FUNCTION cured_needs_proof() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_TABLE_NAME = 'FaultCase' THEN
    IF EXISTS (SELECT 1 FROM "FaultCase" c WHERE c."id" = NEW."id" AND c."outcome" = 'cured'
               AND NOT EXISTS (SELECT 1 FROM "Proof" p WHERE p."caseId" = c."id")) THEN
      RAISE EXCEPTION 'case % is called cured without a proof', NEW."number" USING ERRCODE = 'check_violation', CONSTRAINT = 'cured_needs_proof';
    END IF;
  ELSIF EXISTS (SELECT 1 FROM "FaultCase" c WHERE c."id" = OLD."caseId" AND c."outcome" = 'cured'
                AND NOT EXISTS (SELECT 1 FROM "Proof" p WHERE p."caseId" = c."id")) THEN
    RAISE EXCEPTION 'the last proof of a cured case cannot go' USING ERRCODE = 'check_violation', CONSTRAINT = 'cured_needs_proof';
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER "FaultCase_cured_needs_proof" AFTER INSERT OR UPDATE OF "outcome" ON "FaultCase"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION cured_needs_proof();
CREATE CONSTRAINT TRIGGER "Proof_cured_needs_proof" AFTER DELETE ON "Proof"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION cured_needs_proof();
