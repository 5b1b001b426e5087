-- AlterTable
ALTER TABLE "Hold" ADD COLUMN "needId" TEXT;

-- CreateTable
CREATE TABLE "Need" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "lotId" TEXT,
    "isLotWished" BOOLEAN NOT NULL DEFAULT false,
    "at" DATETIME NOT NULL,
    "day" TEXT NOT NULL,
    "roomId" TEXT,
    "forWhom" TEXT NOT NULL,
    "note" TEXT,
    "weight" INTEGER NOT NULL DEFAULT 1,
    "plates" INTEGER,
    "backing" TEXT,
    "isForExtraction" BOOLEAN NOT NULL DEFAULT false,
    "mobilePhase" TEXT,
    "isPreWashed" BOOLEAN NOT NULL DEFAULT true,
    "regime" TEXT,
    "regimeHumidityPercent" REAL,
    "dryGrams" REAL,
    "limitWaterFraction" REAL,
    "diameterMm" REAL,
    "bedLengthMm" REAL,
    "sampleMg" REAL,
    "deltaRf" REAL,
    "columnVolumes" REAL,
    "flowMlPerMin" REAL,
    "seriesId" TEXT,
    "madeAt" DATETIME NOT NULL,
    "changedAt" DATETIME NOT NULL,
    "metAt" DATETIME,
    "droppedAt" DATETIME,
    "obstacle" JSONB,
    "firstPossibleAt" DATETIME,
    CONSTRAINT "Need_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "NeedSeries" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "NeedSeries" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "weekdays" JSONB NOT NULL,
    "clock" TEXT NOT NULL,
    "fromDay" TEXT NOT NULL,
    "untilDay" TEXT,
    "said" JSONB NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "endedAt" DATETIME
);

-- CreateTable
CREATE TABLE "PrepStep" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "needId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "load" INTEGER NOT NULL DEFAULT 1,
    "loads" INTEGER NOT NULL DEFAULT 1,
    "startAt" DATETIME NOT NULL,
    "endAt" DATETIME NOT NULL,
    "isAttended" BOOLEAN NOT NULL,
    "detail" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 0,
    "changedAt" DATETIME NOT NULL,
    "begunAt" DATETIME,
    "doneAt" DATETIME,
    "doneById" TEXT,
    "events" JSONB NOT NULL,
    "goneAt" DATETIME,
    CONSTRAINT "PrepStep_needId_fkey" FOREIGN KEY ("needId") REFERENCES "Need" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PrepSheet" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "part" TEXT NOT NULL,
    "printedAt" DATETIME NOT NULL,
    "steps" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "SolventBatch" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "solvent" TEXT NOT NULL,
    "batch" TEXT NOT NULL,
    "openedOn" TEXT NOT NULL,
    "peroxideTestedOn" TEXT,
    "addedAt" DATETIME NOT NULL,
    "finishedAt" DATETIME
);

-- CreateTable
CREATE TABLE "PrepPlan" (
    "labId" TEXT NOT NULL PRIMARY KEY,
    "plannedAt" DATETIME NOT NULL,
    "changeNumber" INTEGER NOT NULL
);

-- CreateIndex
CREATE INDEX "Need_labId_at_idx" ON "Need"("labId", "at");

-- CreateIndex
CREATE INDEX "Need_labId_day_idx" ON "Need"("labId", "day");

-- CreateIndex
CREATE INDEX "Need_seriesId_idx" ON "Need"("seriesId");

-- CreateIndex
CREATE INDEX "NeedSeries_labId_endedAt_idx" ON "NeedSeries"("labId", "endedAt");

-- CreateIndex
CREATE INDEX "PrepStep_labId_startAt_idx" ON "PrepStep"("labId", "startAt");

-- CreateIndex
CREATE UNIQUE INDEX "PrepStep_needId_kind_load_key" ON "PrepStep"("needId", "kind", "load");

-- CreateIndex
CREATE INDEX "PrepSheet_labId_day_part_idx" ON "PrepSheet"("labId", "day", "part");

-- CreateIndex
CREATE INDEX "SolventBatch_labId_finishedAt_idx" ON "SolventBatch"("labId", "finishedAt");

-- CreateIndex
CREATE INDEX "Hold_needId_idx" ON "Hold"("needId");
