-- AlterTable
ALTER TABLE "Container" ADD COLUMN "hoodAt" DATETIME;
ALTER TABLE "Container" ADD COLUMN "prepared" JSONB;
ALTER TABLE "Container" ADD COLUMN "preparedAt" DATETIME;
ALTER TABLE "Container" ADD COLUMN "regime" TEXT;
ALTER TABLE "Container" ADD COLUMN "regimeHumidityPercent" REAL;
ALTER TABLE "Container" ADD COLUMN "regimeTemperatureC" REAL;

-- AlterTable
ALTER TABLE "Event" ADD COLUMN "carried" JSONB;

-- CreateTable
CREATE TABLE "Oven" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "roomId" TEXT NOT NULL,
    "shelves" INTEGER NOT NULL,
    "shelfAreaCm2" REAL NOT NULL,
    "shelfHeightMm" REAL NOT NULL,
    "hasFan" BOOLEAN NOT NULL DEFAULT false,
    "lowestC" REAL NOT NULL,
    "highestC" REAL NOT NULL,
    "heatMinutesPerC" REAL NOT NULL,
    "coolMinutesPerC" REAL NOT NULL,
    "doorMinutes" INTEGER NOT NULL,
    "pressureMbar" REAL,
    "waterMbar" REAL,
    "pumpM3PerH" REAL,
    "isUnattended" BOOLEAN NOT NULL DEFAULT true,
    "hours" JSONB,
    "addedAt" DATETIME NOT NULL,
    "removedAt" DATETIME,
    CONSTRAINT "Oven_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OvenCare" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "ovenId" TEXT,
    "sensorId" TEXT,
    "kind" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "until" DATETIME,
    "setValue" REAL,
    "foundValue" REAL,
    "temperatureC" REAL,
    "salt" TEXT,
    "note" TEXT,
    "actorId" TEXT,
    "madeAt" DATETIME NOT NULL,
    "takenBackAt" DATETIME,
    CONSTRAINT "OvenCare_ovenId_fkey" FOREIGN KEY ("ovenId") REFERENCES "Oven" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "OvenCare_sensorId_fkey" FOREIGN KEY ("sensorId") REFERENCES "Sensor" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "DryingRun" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "ovenId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "isPinned" BOOLEAN NOT NULL DEFAULT false,
    "plannedStart" DATETIME NOT NULL,
    "plannedEnd" DATETIME NOT NULL,
    "temperatureC" REAL NOT NULL,
    "setupMinutes" INTEGER NOT NULL,
    "leastMinutes" INTEGER NOT NULL,
    "mostMinutes" INTEGER NOT NULL,
    "isVacuum" BOOLEAN NOT NULL,
    "reason" TEXT NOT NULL,
    "startedAt" DATETIME,
    "dueOutAt" DATETIME,
    "doorAt" JSONB NOT NULL,
    "outAt" DATETIME,
    "cooledAt" DATETIME,
    "endedAt" DATETIME,
    "why" TEXT,
    "madeAt" DATETIME NOT NULL,
    CONSTRAINT "DryingRun_ovenId_fkey" FOREIGN KEY ("ovenId") REFERENCES "Oven" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "DryingLoad" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "requestId" TEXT NOT NULL,
    "runId" TEXT,
    "part" INTEGER NOT NULL,
    "parts" INTEGER NOT NULL,
    "dryGrams" REAL,
    "plates" INTEGER,
    "depthMm" REAL,
    "areaCm2" REAL NOT NULL,
    "trays" INTEGER NOT NULL,
    "containerId" TEXT,
    "events" JSONB NOT NULL,
    "waterFraction" REAL,
    "isWeighed" BOOLEAN NOT NULL DEFAULT false,
    CONSTRAINT "DryingLoad_requestId_fkey" FOREIGN KEY ("requestId") REFERENCES "DryingRequest" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "DryingLoad_runId_fkey" FOREIGN KEY ("runId") REFERENCES "DryingRun" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OvenPlan" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "because" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "gapMinutes" REAL NOT NULL,
    "gapRelative" REAL NOT NULL,
    "gapOvenHours" REAL,
    "isProven" BOOLEAN NOT NULL,
    "stopped" TEXT NOT NULL,
    "weightedLatenessHours" REAL NOT NULL,
    "ovenHours" REAL NOT NULL,
    "runs" INTEGER NOT NULL,
    "seconds" REAL NOT NULL,
    "changes" JSONB NOT NULL,
    "leftOut" JSONB NOT NULL,
    "takenBackAt" DATETIME,
    "before" JSONB NOT NULL
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_DryingRequest" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "dryGrams" REAL,
    "plates" INTEGER,
    "why" TEXT NOT NULL,
    "wantedBy" DATETIME,
    "temperatureC" REAL,
    "minutes" REAL,
    "position" REAL NOT NULL,
    "state" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    "eventId" TEXT,
    "weight" INTEGER NOT NULL DEFAULT 1,
    "depthMm" REAL,
    "readyAt" DATETIME,
    "needId" TEXT,
    CONSTRAINT "DryingRequest_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_DryingRequest" ("containerId", "dryGrams", "endedAt", "eventId", "id", "labId", "madeAt", "minutes", "plates", "position", "state", "temperatureC", "wantedBy", "why") SELECT "containerId", "dryGrams", "endedAt", "eventId", "id", "labId", "madeAt", "minutes", "plates", "position", "state", "temperatureC", "wantedBy", "why" FROM "DryingRequest";
DROP TABLE "DryingRequest";
ALTER TABLE "new_DryingRequest" RENAME TO "DryingRequest";
CREATE INDEX "DryingRequest_labId_state_position_idx" ON "DryingRequest"("labId", "state", "position");
CREATE INDEX "DryingRequest_needId_idx" ON "DryingRequest"("needId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "Oven_labId_removedAt_idx" ON "Oven"("labId", "removedAt");

-- CreateIndex
CREATE INDEX "OvenCare_labId_at_idx" ON "OvenCare"("labId", "at");

-- CreateIndex
CREATE INDEX "OvenCare_ovenId_at_idx" ON "OvenCare"("ovenId", "at");

-- CreateIndex
CREATE INDEX "OvenCare_sensorId_at_idx" ON "OvenCare"("sensorId", "at");

-- CreateIndex
CREATE INDEX "DryingRun_labId_state_plannedStart_idx" ON "DryingRun"("labId", "state", "plannedStart");

-- CreateIndex
CREATE INDEX "DryingRun_labId_plannedEnd_idx" ON "DryingRun"("labId", "plannedEnd");

-- CreateIndex
CREATE INDEX "DryingRun_ovenId_plannedStart_idx" ON "DryingRun"("ovenId", "plannedStart");

-- CreateIndex
CREATE INDEX "DryingLoad_runId_idx" ON "DryingLoad"("runId");

-- CreateIndex
CREATE INDEX "DryingLoad_requestId_idx" ON "DryingLoad"("requestId");

-- CreateIndex
CREATE INDEX "DryingLoad_labId_idx" ON "DryingLoad"("labId");

-- CreateIndex
CREATE INDEX "OvenPlan_labId_madeAt_idx" ON "OvenPlan"("labId", "madeAt");
