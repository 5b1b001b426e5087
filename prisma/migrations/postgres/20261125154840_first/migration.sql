-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateEnum
CREATE TYPE "Reaction" AS ENUM ('ACIDIC', 'NEUTRAL', 'BASIC');

-- CreateEnum
CREATE TYPE "TargetPolicy" AS ENUM ('DRY', 'AS_RECEIVED', 'SET');

-- CreateEnum
CREATE TYPE "NumberOrigin" AS ENUM ('TABLE', 'CERTIFICATE', 'MEASURED', 'DEFAULT', 'UNKNOWN');

-- CreateEnum
CREATE TYPE "Confidence" AS ENUM ('CONFIRMED', 'FROM_MEMORY', 'DERIVED', 'GUESS');

-- CreateEnum
CREATE TYPE "ContainerKind" AS ENUM ('DRUM', 'PORTION', 'PLATE_BOX', 'COLUMN');

-- CreateEnum
CREATE TYPE "Closure" AS ENUM ('OPEN', 'LOOSELY_COVERED', 'WELL_CLOSED', 'TIGHT', 'SEALED');

-- CreateEnum
CREATE TYPE "Scooping" AS ENUM ('TOP', 'SIDE', 'ROLLED');

-- CreateEnum
CREATE TYPE "Backing" AS ENUM ('GLASS', 'ALUMINIUM', 'PLASTIC');

-- CreateEnum
CREATE TYPE "EventType" AS ENUM ('CAME_IN', 'OPENED', 'CLOSED', 'MOVED', 'PORTION_TAKEN', 'PLATES_TAKEN', 'COLUMN_PACKED', 'MIXED', 'DRIED', 'EQUILIBRATED', 'WEIGHED', 'COUNTED', 'TOUCHED_SOLVENT', 'HABIT_SET', 'COMBINED', 'LOST', 'PRE_WASHED', 'SOLVENT_GONE', 'CONDITIONED', 'INTERRUPTED', 'SPENT_ON_CHECK', 'USED_UP', 'DISCARDED', 'CORRECTED');

-- CreateEnum
CREATE TYPE "RoomKind" AS ENUM ('ROOM', 'COLD_STORE', 'DESICCATOR');

-- CreateEnum
CREATE TYPE "Quantity" AS ENUM ('TEMPERATURE', 'RELATIVE_HUMIDITY');

-- CreateEnum
CREATE TYPE "ExposureState" AS ENUM ('GOOD', 'USE_SOON', 'REDRY', 'TOO_DRY', 'UNKNOWN');

-- CreateEnum
CREATE TYPE "DryingRequestState" AS ENUM ('WAITING', 'DRIED', 'WITHDRAWN');

-- CreateEnum
CREATE TYPE "ChangeKind" AS ENUM ('MADE', 'CHANGED', 'GONE');

-- CreateTable
CREATE TABLE "Lab" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "settings" JSONB NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Lab_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Counter" (
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "value" INTEGER NOT NULL,

    CONSTRAINT "Counter_pkey" PRIMARY KEY ("labId","name")
);

-- CreateTable
CREATE TABLE "Person" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "shortName" TEXT NOT NULL,

    CONSTRAINT "Person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Supplier" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,

    CONSTRAINT "Supplier_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Sorbent" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sorbentClass" TEXT NOT NULL,
    "particleSizeLowUm" DOUBLE PRECISION,
    "particleSizeHighUm" DOUBLE PRECISION,
    "meshLow" INTEGER,
    "meshHigh" INTEGER,
    "poreSizeNm" DOUBLE PRECISION,
    "bondedPhase" TEXT,
    "reaction" "Reaction",
    "targetPolicy" "TargetPolicy" NOT NULL DEFAULT 'DRY',
    "targetUpperWaterFraction" DOUBLE PRECISION,
    "targetLowerWaterFraction" DOUBLE PRECISION,

    CONSTRAINT "Sorbent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SorbentProperty" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "value" DOUBLE PRECISION,
    "unit" TEXT NOT NULL,
    "origin" "NumberOrigin" NOT NULL,
    "confidence" "Confidence" NOT NULL,
    "source" TEXT NOT NULL,

    CONSTRAINT "SorbentProperty_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Lot" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "supplierId" TEXT,
    "lotNumber" TEXT NOT NULL,
    "receivedAt" TIMESTAMP(3) NOT NULL,
    "retestOn" TIMESTAMP(3),
    "certificateWaterFraction" DOUBLE PRECISION,
    "certificateMaxWaterFraction" DOUBLE PRECISION,
    "certificate" JSONB NOT NULL,
    "targetPolicy" "TargetPolicy",
    "targetUpperWaterFraction" DOUBLE PRECISION,
    "targetLowerWaterFraction" DOUBLE PRECISION,
    "note" TEXT,

    CONSTRAINT "Lot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Vessel" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "innerDiameterMm" DOUBLE PRECISION NOT NULL,
    "heightMm" DOUBLE PRECISION NOT NULL,
    "mouthDiameterMm" DOUBLE PRECISION NOT NULL,
    "volumeMl" DOUBLE PRECISION NOT NULL,
    "source" TEXT NOT NULL,

    CONSTRAINT "Vessel_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Container" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "kind" "ContainerKind" NOT NULL,
    "lotId" TEXT NOT NULL,
    "vesselId" TEXT,
    "takenFromId" TEXT,
    "tareGrams" DOUBLE PRECISION,
    "usualClosure" "Closure" NOT NULL,
    "innerDiameterMm" DOUBLE PRECISION,
    "heightMm" DOUBLE PRECISION,
    "mouthDiameterMm" DOUBLE PRECISION,
    "volumeMl" DOUBLE PRECISION,
    "bedLengthMm" DOUBLE PRECISION,
    "backing" "Backing",
    "layerThicknessMm" DOUBLE PRECISION,
    "plateWidthMm" DOUBLE PRECISION,
    "plateHeightMm" DOUBLE PRECISION,
    "roomId" TEXT NOT NULL,
    "cameInAt" TIMESTAMP(3) NOT NULL,
    "isOpen" BOOLEAN NOT NULL,
    "openedAt" TIMESTAMP(3),
    "closure" "Closure" NOT NULL,
    "dryGrams" DOUBLE PRECISION NOT NULL,
    "dryGramsAssumed" BOOLEAN NOT NULL DEFAULT false,
    "plates" INTEGER,
    "heldDryGrams" DOUBLE PRECISION NOT NULL DEFAULT 0,
    "heldPlates" INTEGER NOT NULL DEFAULT 0,
    "scooping" "Scooping" NOT NULL DEFAULT 'TOP',
    "habit" JSONB,
    "wettedAt" TIMESTAMP(3),
    "touchedSolventAt" TIMESTAMP(3),
    "finishedAt" TIMESTAMP(3),

    CONSTRAINT "Container_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Event" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "otherContainerId" TEXT,
    "type" "EventType" NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "recordedAt" TIMESTAMP(3) NOT NULL,
    "recordedSeq" INTEGER NOT NULL,
    "actorId" TEXT,
    "note" TEXT,
    "detail" JSONB NOT NULL,
    "dryGrams" DOUBLE PRECISION,
    "plates" INTEGER,
    "correctsId" TEXT,

    CONSTRAINT "Event_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Hold" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "dryGrams" DOUBLE PRECISION,
    "plates" INTEGER,
    "forWhat" TEXT NOT NULL,
    "until" TIMESTAMP(3),
    "madeAt" TIMESTAMP(3) NOT NULL,
    "releasedAt" TIMESTAMP(3),

    CONSTRAINT "Hold_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Room" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" "RoomKind" NOT NULL,
    "assumedHumidityPercent" DOUBLE PRECISION,
    "assumedTemperatureC" DOUBLE PRECISION,
    "desiccantRenewedAt" TIMESTAMP(3),

    CONSTRAINT "Room_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Sensor" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "roomId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "setAsideWhy" TEXT,

    CONSTRAINT "Sensor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ReadingDay" (
    "labId" TEXT NOT NULL,
    "sensorId" TEXT NOT NULL,
    "quantity" "Quantity" NOT NULL,
    "day" INTEGER NOT NULL,
    "count" INTEGER NOT NULL,
    "offsetsMs" BYTEA NOT NULL,
    "values" BYTEA NOT NULL,

    CONSTRAINT "ReadingDay_pkey" PRIMARY KEY ("sensorId","quantity","day")
);

-- CreateTable
CREATE TABLE "RoomDay" (
    "labId" TEXT NOT NULL,
    "roomId" TEXT NOT NULL,
    "day" INTEGER NOT NULL,
    "blocks" BYTEA NOT NULL,

    CONSTRAINT "RoomDay_pkey" PRIMARY KEY ("roomId","day")
);

-- CreateTable
CREATE TABLE "StoredFile" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "sizeBytes" INTEGER NOT NULL,
    "bytes" BYTEA,
    "receivedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "StoredFile_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Import" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "fileId" TEXT NOT NULL,
    "roomId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "answers" JSONB NOT NULL,
    "summary" JSONB NOT NULL,

    CONSTRAINT "Import_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Exposure" (
    "containerId" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "asOf" TIMESTAMP(3) NOT NULL,
    "state" "ExposureState" NOT NULL,
    "urgency" DOUBLE PRECISION NOT NULL,
    "staleFrom" TIMESTAMP(3),
    "meanWaterFraction" DOUBLE PRECISION,
    "low" DOUBLE PRECISION,
    "high" DOUBLE PRECISION,
    "scoopWaterFraction" DOUBLE PRECISION,
    "scoopLow" DOUBLE PRECISION,
    "scoopHigh" DOUBLE PRECISION,
    "topWaterFraction" DOUBLE PRECISION,
    "chancePastLimit" DOUBLE PRECISION,
    "hoursToLimit" DOUBLE PRECISION,
    "hoursToLimitOpen" DOUBLE PRECISION,
    "hoursToLimitClosed" DOUBLE PRECISION,
    "upperWaterFraction" DOUBLE PRECISION,
    "lowerWaterFraction" DOUBLE PRECISION,
    "grade" TEXT,
    "minutesToRoomEquilibrium" DOUBLE PRECISION,
    "uncertainAirFraction" DOUBLE PRECISION,
    "reason" TEXT NOT NULL,

    CONSTRAINT "Exposure_pkey" PRIMARY KEY ("containerId")
);

-- CreateTable
CREATE TABLE "Checkpoint" (
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "data" BYTEA NOT NULL,

    CONSTRAINT "Checkpoint_pkey" PRIMARY KEY ("containerId","at")
);

-- CreateTable
CREATE TABLE "Parcel" (
    "eventId" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "fromContainerId" TEXT NOT NULL,
    "toContainerId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "data" BYTEA NOT NULL,

    CONSTRAINT "Parcel_pkey" PRIMARY KEY ("eventId")
);

-- CreateTable
CREATE TABLE "LearnedFactor" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "factor" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "lnValue" DOUBLE PRECISION NOT NULL,
    "lnSd" DOUBLE PRECISION NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "because" JSONB NOT NULL,

    CONSTRAINT "LearnedFactor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DryingRequest" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "dryGrams" DOUBLE PRECISION,
    "plates" INTEGER,
    "why" TEXT NOT NULL,
    "wantedBy" TIMESTAMP(3),
    "position" DOUBLE PRECISION NOT NULL,
    "state" "DryingRequestState" NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),
    "eventId" TEXT,

    CONSTRAINT "DryingRequest_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ClientKey" (
    "labId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "bodyHash" TEXT NOT NULL,
    "answer" JSONB NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "ClientKey_pkey" PRIMARY KEY ("labId","key")
);

-- CreateTable
CREATE TABLE "Change" (
    "id" SERIAL NOT NULL,
    "labId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "entity" TEXT NOT NULL,
    "entityId" TEXT NOT NULL,
    "kind" "ChangeKind" NOT NULL,

    CONSTRAINT "Change_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Lab_name_key" ON "Lab"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Person_labId_shortName_key" ON "Person"("labId", "shortName");

-- CreateIndex
CREATE UNIQUE INDEX "Supplier_labId_name_key" ON "Supplier"("labId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Sorbent_labId_name_key" ON "Sorbent"("labId", "name");

-- CreateIndex
CREATE INDEX "SorbentProperty_labId_idx" ON "SorbentProperty"("labId");

-- CreateIndex
CREATE UNIQUE INDEX "SorbentProperty_sorbentId_name_key" ON "SorbentProperty"("sorbentId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Lot_labId_sorbentId_lotNumber_key" ON "Lot"("labId", "sorbentId", "lotNumber");

-- CreateIndex
CREATE UNIQUE INDEX "Vessel_labId_name_key" ON "Vessel"("labId", "name");

-- CreateIndex
CREATE INDEX "Container_labId_isOpen_finishedAt_idx" ON "Container"("labId", "isOpen", "finishedAt");

-- CreateIndex
CREATE INDEX "Container_lotId_idx" ON "Container"("lotId");

-- CreateIndex
CREATE INDEX "Container_roomId_idx" ON "Container"("roomId");

-- CreateIndex
CREATE INDEX "Container_takenFromId_idx" ON "Container"("takenFromId");

-- CreateIndex
CREATE UNIQUE INDEX "Container_labId_label_key" ON "Container"("labId", "label");

-- CreateIndex
CREATE UNIQUE INDEX "Event_correctsId_key" ON "Event"("correctsId");

-- CreateIndex
CREATE INDEX "Event_containerId_at_idx" ON "Event"("containerId", "at");

-- CreateIndex
CREATE INDEX "Event_otherContainerId_at_idx" ON "Event"("otherContainerId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "Event_labId_recordedSeq_key" ON "Event"("labId", "recordedSeq");

-- CreateIndex
CREATE INDEX "Hold_labId_releasedAt_idx" ON "Hold"("labId", "releasedAt");

-- CreateIndex
CREATE INDEX "Hold_containerId_idx" ON "Hold"("containerId");

-- CreateIndex
CREATE UNIQUE INDEX "Room_labId_name_key" ON "Room"("labId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Sensor_labId_roomId_name_key" ON "Sensor"("labId", "roomId", "name");

-- CreateIndex
CREATE INDEX "ReadingDay_labId_idx" ON "ReadingDay"("labId");

-- CreateIndex
CREATE INDEX "RoomDay_labId_idx" ON "RoomDay"("labId");

-- CreateIndex
CREATE INDEX "StoredFile_labId_sha256_idx" ON "StoredFile"("labId", "sha256");

-- CreateIndex
CREATE INDEX "Import_labId_at_idx" ON "Import"("labId", "at");

-- CreateIndex
CREATE INDEX "Exposure_labId_urgency_idx" ON "Exposure"("labId", "urgency");

-- CreateIndex
CREATE INDEX "Exposure_labId_state_urgency_idx" ON "Exposure"("labId", "state", "urgency");

-- CreateIndex
CREATE INDEX "Exposure_labId_staleFrom_idx" ON "Exposure"("labId", "staleFrom");

-- CreateIndex
CREATE INDEX "Checkpoint_labId_idx" ON "Checkpoint"("labId");

-- CreateIndex
CREATE INDEX "Parcel_labId_idx" ON "Parcel"("labId");

-- CreateIndex
CREATE INDEX "Parcel_fromContainerId_at_idx" ON "Parcel"("fromContainerId", "at");

-- CreateIndex
CREATE INDEX "Parcel_toContainerId_at_idx" ON "Parcel"("toContainerId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "LearnedFactor_labId_factor_version_key" ON "LearnedFactor"("labId", "factor", "version");

-- CreateIndex
CREATE INDEX "DryingRequest_labId_state_position_idx" ON "DryingRequest"("labId", "state", "position");

-- CreateIndex
CREATE INDEX "Change_labId_id_idx" ON "Change"("labId", "id");

-- AddForeignKey
ALTER TABLE "Person" ADD CONSTRAINT "Person_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Supplier" ADD CONSTRAINT "Supplier_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sorbent" ADD CONSTRAINT "Sorbent_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SorbentProperty" ADD CONSTRAINT "SorbentProperty_sorbentId_fkey" FOREIGN KEY ("sorbentId") REFERENCES "Sorbent"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Lot" ADD CONSTRAINT "Lot_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Lot" ADD CONSTRAINT "Lot_sorbentId_fkey" FOREIGN KEY ("sorbentId") REFERENCES "Sorbent"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Lot" ADD CONSTRAINT "Lot_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Vessel" ADD CONSTRAINT "Vessel_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Container" ADD CONSTRAINT "Container_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Container" ADD CONSTRAINT "Container_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Container" ADD CONSTRAINT "Container_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Container" ADD CONSTRAINT "Container_vesselId_fkey" FOREIGN KEY ("vesselId") REFERENCES "Vessel"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Container" ADD CONSTRAINT "Container_takenFromId_fkey" FOREIGN KEY ("takenFromId") REFERENCES "Container"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Event" ADD CONSTRAINT "Event_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Event" ADD CONSTRAINT "Event_otherContainerId_fkey" FOREIGN KEY ("otherContainerId") REFERENCES "Container"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Event" ADD CONSTRAINT "Event_actorId_fkey" FOREIGN KEY ("actorId") REFERENCES "Person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Event" ADD CONSTRAINT "Event_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "Event"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Hold" ADD CONSTRAINT "Hold_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Room" ADD CONSTRAINT "Room_labId_fkey" FOREIGN KEY ("labId") REFERENCES "Lab"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Sensor" ADD CONSTRAINT "Sensor_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReadingDay" ADD CONSTRAINT "ReadingDay_sensorId_fkey" FOREIGN KEY ("sensorId") REFERENCES "Sensor"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoomDay" ADD CONSTRAINT "RoomDay_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Import" ADD CONSTRAINT "Import_fileId_fkey" FOREIGN KEY ("fileId") REFERENCES "StoredFile"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Import" ADD CONSTRAINT "Import_roomId_fkey" FOREIGN KEY ("roomId") REFERENCES "Room"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Exposure" ADD CONSTRAINT "Exposure_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DryingRequest" ADD CONSTRAINT "DryingRequest_containerId_fkey" FOREIGN KEY ("containerId") REFERENCES "Container"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
