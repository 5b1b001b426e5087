-- CreateEnum
CREATE TYPE "NeedKind" AS ENUM ('PLATES', 'SORBENT', 'COLUMN');

-- CreateEnum
CREATE TYPE "PrepStepKind" AS ENUM ('PRE_WASH', 'AIR_DRY', 'OVEN', 'COOL', 'KEEP', 'EQUILIBRATE', 'PACK', 'CONDITION', 'REST', 'HAND_OVER');

-- CreateEnum
CREATE TYPE "PrepPart" AS ENUM ('MORNING', 'EVENING');

-- AlterTable
ALTER TABLE "Hold" ADD COLUMN     "needId" TEXT;

-- CreateTable
CREATE TABLE "Need" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "kind" "NeedKind" NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "lotId" TEXT,
    "isLotWished" BOOLEAN NOT NULL DEFAULT false,
    "at" TIMESTAMP(3) NOT NULL,
    "day" TEXT NOT NULL,
    "roomId" TEXT,
    "forWhom" TEXT NOT NULL,
    "note" TEXT,
    "weight" INTEGER NOT NULL DEFAULT 1,
    "plates" INTEGER,
    "backing" "Backing",
    "isForExtraction" BOOLEAN NOT NULL DEFAULT false,
    "mobilePhase" TEXT,
    "isPreWashed" BOOLEAN NOT NULL DEFAULT true,
    "regime" "PlateRegime",
    "regimeHumidityPercent" DOUBLE PRECISION,
    "dryGrams" DOUBLE PRECISION,
    "limitWaterFraction" DOUBLE PRECISION,
    "diameterMm" DOUBLE PRECISION,
    "bedLengthMm" DOUBLE PRECISION,
    "sampleMg" DOUBLE PRECISION,
    "deltaRf" DOUBLE PRECISION,
    "columnVolumes" DOUBLE PRECISION,
    "flowMlPerMin" DOUBLE PRECISION,
    "seriesId" TEXT,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL,
    "metAt" TIMESTAMP(3),
    "droppedAt" TIMESTAMP(3),
    "obstacle" JSONB,
    "firstPossibleAt" TIMESTAMP(3),

    CONSTRAINT "Need_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "NeedSeries" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "weekdays" JSONB NOT NULL,
    "clock" TEXT NOT NULL,
    "fromDay" TEXT NOT NULL,
    "untilDay" TEXT,
    "said" JSONB NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),

    CONSTRAINT "NeedSeries_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PrepStep" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "needId" TEXT NOT NULL,
    "kind" "PrepStepKind" NOT NULL,
    "load" INTEGER NOT NULL DEFAULT 1,
    "loads" INTEGER NOT NULL DEFAULT 1,
    "startAt" TIMESTAMP(3) NOT NULL,
    "endAt" TIMESTAMP(3) NOT NULL,
    "isAttended" BOOLEAN NOT NULL,
    "detail" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 0,
    "changedAt" TIMESTAMP(3) NOT NULL,
    "begunAt" TIMESTAMP(3),
    "doneAt" TIMESTAMP(3),
    "doneById" TEXT,
    "events" JSONB NOT NULL,
    "goneAt" TIMESTAMP(3),

    CONSTRAINT "PrepStep_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PrepSheet" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "part" "PrepPart" NOT NULL,
    "printedAt" TIMESTAMP(3) NOT NULL,
    "steps" JSONB NOT NULL,

    CONSTRAINT "PrepSheet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SolventBatch" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "solvent" TEXT NOT NULL,
    "batch" TEXT NOT NULL,
    "openedOn" TEXT NOT NULL,
    "peroxideTestedOn" TEXT,
    "addedAt" TIMESTAMP(3) NOT NULL,
    "finishedAt" TIMESTAMP(3),

    CONSTRAINT "SolventBatch_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PrepPlan" (
    "labId" TEXT NOT NULL,
    "plannedAt" TIMESTAMP(3) NOT NULL,
    "changeNumber" INTEGER NOT NULL,

    CONSTRAINT "PrepPlan_pkey" PRIMARY KEY ("labId")
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

-- AddForeignKey
ALTER TABLE "Need" ADD CONSTRAINT "Need_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "NeedSeries"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PrepStep" ADD CONSTRAINT "PrepStep_needId_fkey" FOREIGN KEY ("needId") REFERENCES "Need"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
