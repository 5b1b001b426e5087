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
    "at" DATETIME NOT NULL,
    "week" TEXT NOT NULL,
    "dryGrams" REAL NOT NULL,
    "plates" INTEGER,
    "asReceivedGrams" REAL,
    "why" TEXT,

    PRIMARY KEY ("containerId", "eventId", "part")
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
    "dryGrams" REAL NOT NULL,
    "plates" INTEGER NOT NULL,
    "asReceivedGrams" REAL NOT NULL,
    "lines" INTEGER NOT NULL,

    PRIMARY KEY ("lotId", "isPlates", "week", "isStock", "account", "why")
);

-- CreateTable
CREATE TABLE "LedgerState" (
    "labId" TEXT NOT NULL PRIMARY KEY,
    "changeNumber" INTEGER NOT NULL,
    "madeUpTo" TEXT,
    "isWhole" BOOLEAN NOT NULL DEFAULT false,
    "timeZone" TEXT NOT NULL
);

-- CreateIndex
CREATE INDEX "LedgerLine_lotId_week_idx" ON "LedgerLine"("lotId", "week");

-- CreateIndex
CREATE INDEX "LedgerLine_labId_idx" ON "LedgerLine"("labId");

-- CreateIndex
CREATE INDEX "LedgerWeek_labId_idx" ON "LedgerWeek"("labId");
