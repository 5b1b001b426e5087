-- CreateTable
CREATE TABLE "WeighingJudgement" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "eventId" TEXT NOT NULL,
    "isRight" BOOLEAN,
    "at" DATETIME NOT NULL,
    "seq" INTEGER NOT NULL,
    "actorId" TEXT
);

-- CreateTable
CREATE TABLE "LearnedWeighing" (
    "eventId" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "containerId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "of" TEXT NOT NULL,
    "counts" TEXT NOT NULL,
    "found" REAL,
    "noiseSd" REAL,
    "expectedBefore" REAL,
    "sdBefore" REAL,
    "expectedNow" REAL,
    "sigmas" REAL,
    "why" TEXT,
    "bearsOn" JSONB NOT NULL
);

-- CreateIndex
CREATE INDEX "WeighingJudgement_labId_eventId_idx" ON "WeighingJudgement"("labId", "eventId");

-- CreateIndex
CREATE INDEX "LearnedWeighing_labId_at_idx" ON "LearnedWeighing"("labId", "at");

-- CreateIndex
CREATE INDEX "LearnedWeighing_containerId_idx" ON "LearnedWeighing"("containerId");
