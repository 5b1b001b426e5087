-- CreateEnum
CREATE TYPE "Retention" AS ENUM ('RF', 'RETENTION_FACTOR', 'COLUMN_VOLUMES');

-- CreateEnum
CREATE TYPE "LotOutcome" AS ENUM ('ACCEPTED', 'REJECTED');

-- CreateEnum
CREATE TYPE "Chamber" AS ENUM ('TWIN_TROUGH', 'FLAT_BOTTOM', 'SANDWICH', 'AUTOMATIC', 'JAR');

-- CreateEnum
CREATE TYPE "GradeBy" AS ENUM ('COLUMN_DYES', 'PLATE_DYES', 'OTHER');

-- CreateTable
CREATE TABLE "LotCheck" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "oldLotId" TEXT NOT NULL,
    "newLotId" TEXT NOT NULL,
    "retention" "Retention" NOT NULL,
    "margin" DOUBLE PRECISION,
    "note" TEXT,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "takenBackAt" TIMESTAMP(3),

    CONSTRAINT "LotCheck_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RetentionRun" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "checkId" TEXT,
    "sorbentId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "containerId" TEXT,
    "retention" "Retention" NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "tank" TEXT,
    "plate" TEXT,
    "box" TEXT,
    "spots" JSONB NOT NULL,
    "chamber" "Chamber",
    "isLined" BOOLEAN,
    "saturationMinutes" DOUBLE PRECISION,
    "eluent" TEXT,
    "eluentBatch" TEXT,
    "stabiliser" TEXT,
    "temperatureC" DOUBLE PRECISION,
    "distanceMm" DOUBLE PRECISION,
    "humidityPercent" DOUBLE PRECISION,
    "isAirFilled" BOOLEAN NOT NULL DEFAULT false,
    "regime" "PlateRegime",
    "hoursPrepared" DOUBLE PRECISION,
    "waterFraction" DOUBLE PRECISION,
    "isWaterFilled" BOOLEAN NOT NULL DEFAULT false,
    "ranById" TEXT,
    "note" TEXT,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "takenBackAt" TIMESTAMP(3),

    CONSTRAINT "RetentionRun_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "LotDecision" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "checkId" TEXT,
    "outcome" "LotOutcome" NOT NULL,
    "why" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "actorId" TEXT,
    "takenBackAt" TIMESTAMP(3),

    CONSTRAINT "LotDecision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GradeTable" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "sorbentClass" TEXT NOT NULL,
    "variant" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "grades" JSONB NOT NULL,
    "isUsed" BOOLEAN NOT NULL DEFAULT false,
    "changedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "GradeTable_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GradeMeasured" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "by" "GradeBy" NOT NULL,
    "grade" TEXT NOT NULL,
    "seen" JSONB NOT NULL,
    "waterFraction" DOUBLE PRECISION,
    "note" TEXT,
    "actorId" TEXT,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "takenBackAt" TIMESTAMP(3),

    CONSTRAINT "GradeMeasured_pkey" PRIMARY KEY ("id")
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

-- AddForeignKey
ALTER TABLE "RetentionRun" ADD CONSTRAINT "RetentionRun_checkId_fkey" FOREIGN KEY ("checkId") REFERENCES "LotCheck"("id") ON DELETE SET NULL ON UPDATE CASCADE;
