-- CreateTable
CREATE TABLE "LedgerLine" (
    "containerId" TEXT NOT NULL,
    "eventId" TEXT NOT NULL,
    "part" INTEGER NOT NULL,
    "labId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "isPlates" BOOLEAN NOT NULL,
    "isStock" BOOLEAN NOT NULL,
    "account" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "week" TEXT NOT NULL,
    "dryGrams" DOUBLE PRECISION NOT NULL,
    "plates" INTEGER,
    "asReceivedGrams" DOUBLE PRECISION,
    "why" TEXT,

    CONSTRAINT "LedgerLine_pkey" PRIMARY KEY ("containerId","eventId","part")
);

-- CreateTable
CREATE TABLE "LedgerWeek" (
    "lotId" TEXT NOT NULL,
    "isPlates" BOOLEAN NOT NULL,
    "week" TEXT NOT NULL,
    "isStock" BOOLEAN NOT NULL,
    "account" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "labId" TEXT NOT NULL,
    "dryGrams" DOUBLE PRECISION NOT NULL,
    "plates" INTEGER NOT NULL,
    "asReceivedGrams" DOUBLE PRECISION NOT NULL,
    "lines" INTEGER NOT NULL,

    CONSTRAINT "LedgerWeek_pkey" PRIMARY KEY ("lotId","isPlates","week","isStock","account","why")
);

-- CreateTable
CREATE TABLE "LedgerState" (
    "labId" TEXT NOT NULL,
    "changeNumber" INTEGER NOT NULL,
    "madeUpTo" TEXT,
    "isWhole" BOOLEAN NOT NULL DEFAULT false,
    "timeZone" TEXT NOT NULL,

    CONSTRAINT "LedgerState_pkey" PRIMARY KEY ("labId")
);

-- CreateIndex
CREATE INDEX "LedgerLine_lotId_week_idx" ON "LedgerLine"("lotId", "week");

-- CreateIndex
CREATE INDEX "LedgerLine_labId_idx" ON "LedgerLine"("labId");

-- CreateIndex
CREATE INDEX "LedgerWeek_labId_idx" ON "LedgerWeek"("labId");
