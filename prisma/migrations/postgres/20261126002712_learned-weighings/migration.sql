-- CreateTable
CREATE TABLE "WeighingJudgement" (
    "id" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "eventId" TEXT NOT NULL,
    "isRight" BOOLEAN,
    "at" TIMESTAMP(3) NOT NULL,
    "seq" INTEGER NOT NULL,
    "actorId" TEXT,

    CONSTRAINT "WeighingJudgement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "LearnedWeighing" (
    "eventId" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "of" TEXT NOT NULL,
    "counts" TEXT NOT NULL,
    "found" DOUBLE PRECISION,
    "noiseSd" DOUBLE PRECISION,
    "expectedBefore" DOUBLE PRECISION,
    "sdBefore" DOUBLE PRECISION,
    "expectedNow" DOUBLE PRECISION,
    "sigmas" DOUBLE PRECISION,
    "why" TEXT,
    "bearsOn" JSONB NOT NULL,

    CONSTRAINT "LearnedWeighing_pkey" PRIMARY KEY ("eventId")
);

-- CreateIndex
CREATE INDEX "WeighingJudgement_labId_eventId_idx" ON "WeighingJudgement"("labId", "eventId");

-- CreateIndex
CREATE INDEX "LearnedWeighing_labId_at_idx" ON "LearnedWeighing"("labId", "at");

-- CreateIndex
CREATE INDEX "LearnedWeighing_containerId_idx" ON "LearnedWeighing"("containerId");
