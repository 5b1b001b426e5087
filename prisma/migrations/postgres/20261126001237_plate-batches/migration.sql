-- CreateEnum
CREATE TYPE "PlateRegime" AS ENUM ('DRY_UNTIL_SPOTTED', 'EQUILIBRATED');

-- CreateEnum
CREATE TYPE "OvenKind" AS ENUM ('AIR', 'VACUUM');

-- CreateEnum
CREATE TYPE "OvenCareKind" AS ENUM ('TRUE_TEMPERATURE', 'VACUUM_GAUGE', 'PUMP_OIL', 'COLD_TRAP', 'BAKE_OUT', 'OUT_OF_ORDER', 'HYGROMETER');

-- CreateEnum
CREATE TYPE "DryingRunState" AS ENUM ('PLANNED', 'IN_OVEN', 'COOLING', 'COOLED', 'FINISHED', 'INTERRUPTED');

-- AlterTable
ALTER TABLE "Container" ADD COLUMN     "hoodAt" TIMESTAMP(3),
ADD COLUMN     "prepared" JSONB,
ADD COLUMN     "preparedAt" TIMESTAMP(3),
ADD COLUMN     "regime" "PlateRegime",
ADD COLUMN     "regimeHumidityPercent" DOUBLE PRECISION,
ADD COLUMN     "regimeTemperatureC" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "Event" ADD COLUMN     "carried" JSONB;

-- AlterTable
ALTER TABLE "DryingRequest" ADD COLUMN     "depthMm" DOUBLE PRECISION,
ADD COLUMN     "needId" TEXT,
ADD COLUMN     "readyAt" TIMESTAMP(3),
ADD COLUMN     "weight" INTEGER NOT NULL DEFAULT 1;

-- CreateTable
CREATE TABLE "Oven" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" "OvenKind" NOT NULL,
    "roomId" TEXT NOT NULL,
    "shelves" INTEGER NOT NULL,
    "shelfAreaCm2" DOUBLE PRECISION NOT NULL,
    "shelfHeightMm" DOUBLE PRECISION NOT NULL,
    "hasFan" BOOLEAN NOT NULL DEFAULT false,
    "lowestC" DOUBLE PRECISION NOT NULL,
    "highestC" DOUBLE PRECISION NOT NULL,
    "heatMinutesPerC" DOUBLE PRECISION NOT NULL,
    "coolMinutesPerC" DOUBLE PRECISION NOT NULL,
    "doorMinutes" INTEGER NOT NULL,
    "pressureMbar" DOUBLE PRECISION,
    "waterMbar" DOUBLE PRECISION,
    "pumpM3PerH" DOUBLE PRECISION,
    "isUnattended" BOOLEAN NOT NULL DEFAULT true,
    "hours" JSONB,
    "addedAt" TIMESTAMP(3) NOT NULL,
    "removedAt" TIMESTAMP(3),

    CONSTRAINT "Oven_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OvenCare" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "ovenId" TEXT,
    "sensorId" TEXT,
    "kind" "OvenCareKind" NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "until" TIMESTAMP(3),
    "setValue" DOUBLE PRECISION,
    "foundValue" DOUBLE PRECISION,
    "temperatureC" DOUBLE PRECISION,
    "salt" TEXT,
    "note" TEXT,
    "actorId" TEXT,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "takenBackAt" TIMESTAMP(3),

    CONSTRAINT "OvenCare_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DryingRun" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "ovenId" TEXT NOT NULL,
    "state" "DryingRunState" NOT NULL,
    "isPinned" BOOLEAN NOT NULL DEFAULT false,
    "plannedStart" TIMESTAMP(3) NOT NULL,
    "plannedEnd" TIMESTAMP(3) NOT NULL,
    "temperatureC" DOUBLE PRECISION NOT NULL,
    "setupMinutes" INTEGER NOT NULL,
    "leastMinutes" INTEGER NOT NULL,
    "mostMinutes" INTEGER NOT NULL,
    "isVacuum" BOOLEAN NOT NULL,
    "reason" TEXT NOT NULL,
    "startedAt" TIMESTAMP(3),
    "dueOutAt" TIMESTAMP(3),
    "doorAt" JSONB NOT NULL,
    "outAt" TIMESTAMP(3),
    "cooledAt" TIMESTAMP(3),
    "endedAt" TIMESTAMP(3),
    "why" TEXT,
    "madeAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "DryingRun_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DryingLoad" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "requestId" TEXT NOT NULL,
    "runId" TEXT,
    "part" INTEGER NOT NULL,
    "parts" INTEGER NOT NULL,
    "dryGrams" DOUBLE PRECISION,
    "plates" INTEGER,
    "depthMm" DOUBLE PRECISION,
    "areaCm2" DOUBLE PRECISION NOT NULL,
    "trays" INTEGER NOT NULL,
    "containerId" TEXT,
    "events" JSONB NOT NULL,
    "waterFraction" DOUBLE PRECISION,
    "isWeighed" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "DryingLoad_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OvenPlan" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "because" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "gapMinutes" DOUBLE PRECISION NOT NULL,
    "gapRelative" DOUBLE PRECISION NOT NULL,
    "gapOvenHours" DOUBLE PRECISION,
    "isProven" BOOLEAN NOT NULL,
    "stopped" TEXT NOT NULL,
    "weightedLatenessHours" DOUBLE PRECISION NOT NULL,
    "ovenHours" DOUBLE PRECISION NOT NULL,
    "runs" INTEGER NOT NULL,
    "seconds" DOUBLE PRECISION NOT NULL,
    "changes" JSONB NOT NULL,
    "leftOut" JSONB NOT NULL,
    "takenBackAt" TIMESTAMP(3),
    "before" JSONB NOT NULL,

    CONSTRAINT "OvenPlan_pkey" PRIMARY KEY ("id")
);

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

-- CreateIndex
CREATE INDEX "DryingRequest_needId_idx" ON "DryingRequest"("needId");

-- AddForeignKey
ALTER TABLE "Oven" ADD CONSTRAINT "Oven_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OvenCare" ADD CONSTRAINT "OvenCare_ovenId_fkey" FOREIGN KEY ("ovenId") REFERENCES "Oven"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OvenCare" ADD CONSTRAINT "OvenCare_sensorId_fkey" FOREIGN KEY ("sensorId") REFERENCES "Sensor"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DryingRun" ADD CONSTRAINT "DryingRun_ovenId_fkey" FOREIGN KEY ("ovenId") REFERENCES "Oven"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DryingLoad" ADD CONSTRAINT "DryingLoad_requestId_fkey" FOREIGN KEY ("requestId") REFERENCES "DryingRequest"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DryingLoad" ADD CONSTRAINT "DryingLoad_runId_fkey" FOREIGN KEY ("runId") REFERENCES "DryingRun"("id") ON DELETE SET NULL ON UPDATE CASCADE;
