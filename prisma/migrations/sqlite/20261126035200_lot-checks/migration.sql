-- CreateTable
CREATE TABLE "LotCheck" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "oldLotId" TEXT NOT NULL,
    "newLotId" TEXT NOT NULL,
    "retention" TEXT NOT NULL,
    "margin" REAL,
    "note" TEXT,
    "madeAt" DATETIME NOT NULL,
    "takenBackAt" DATETIME
);

-- CreateTable
CREATE TABLE "RetentionRun" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "checkId" TEXT,
    "sorbentId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "containerId" TEXT,
    "retention" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "tank" TEXT,
    "plate" TEXT,
    "box" TEXT,
    "spots" JSONB NOT NULL,
    "chamber" TEXT,
    "isLined" BOOLEAN,
    "saturationMinutes" REAL,
    "eluent" TEXT,
    "eluentBatch" TEXT,
    "stabiliser" TEXT,
    "temperatureC" REAL,
    "distanceMm" REAL,
    "humidityPercent" REAL,
    "isAirFilled" BOOLEAN NOT NULL DEFAULT false,
    "regime" TEXT,
    "hoursPrepared" REAL,
    "waterFraction" REAL,
    "isWaterFilled" BOOLEAN NOT NULL DEFAULT false,
    "ranById" TEXT,
    "note" TEXT,
    "madeAt" DATETIME NOT NULL,
    "takenBackAt" DATETIME,
    CONSTRAINT "RetentionRun_checkId_fkey" FOREIGN KEY ("checkId") REFERENCES "LotCheck" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "LotDecision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "checkId" TEXT,
    "outcome" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "actorId" TEXT,
    "takenBackAt" DATETIME
);

-- CreateTable
CREATE TABLE "GradeTable" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "sorbentClass" TEXT NOT NULL,
    "variant" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "grades" JSONB NOT NULL,
    "isUsed" BOOLEAN NOT NULL DEFAULT false,
    "changedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "GradeMeasured" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "by" TEXT NOT NULL,
    "grade" TEXT NOT NULL,
    "seen" JSONB NOT NULL,
    "waterFraction" REAL,
    "note" TEXT,
    "actorId" TEXT,
    "madeAt" DATETIME NOT NULL,
    "takenBackAt" DATETIME
);

-- CreateIndex
CREATE INDEX "LotCheck_labId_newLotId_idx" ON "LotCheck"("labId", "newLotId");

-- CreateIndex
CREATE INDEX "LotCheck_labId_sorbentId_idx" ON "LotCheck"("labId", "sorbentId");

-- CreateIndex
CREATE INDEX "RetentionRun_labId_sorbentId_at_idx" ON "RetentionRun"("labId", "sorbentId", "at");

-- CreateIndex
CREATE INDEX "RetentionRun_labId_at_idx" ON "RetentionRun"("labId", "at");

-- CreateIndex
CREATE INDEX "RetentionRun_checkId_idx" ON "RetentionRun"("checkId");

-- CreateIndex
CREATE INDEX "LotDecision_labId_lotId_idx" ON "LotDecision"("labId", "lotId");

-- CreateIndex
CREATE UNIQUE INDEX "GradeTable_labId_sorbentClass_variant_key" ON "GradeTable"("labId", "sorbentClass", "variant");

-- CreateIndex
CREATE INDEX "GradeMeasured_labId_at_idx" ON "GradeMeasured"("labId", "at");

-- CreateIndex
CREATE INDEX "GradeMeasured_containerId_at_idx" ON "GradeMeasured"("containerId", "at");
