-- CreateTable
CREATE TABLE "Barcode" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "labId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "sorbentId" TEXT NOT NULL,
    "supplierId" TEXT,
    "kind" TEXT NOT NULL,
    "grams" REAL,
    "plates" INTEGER,
    "vesselId" TEXT,
    "backing" TEXT,
    "closure" TEXT,
    "learnedAt" DATETIME NOT NULL,
    CONSTRAINT "Barcode_sorbentId_fkey" FOREIGN KEY ("sorbentId") REFERENCES "Sorbent" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Barcode_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Barcode_vesselId_fkey" FOREIGN KEY ("vesselId") REFERENCES "Vessel" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Barcode_sorbentId_idx" ON "Barcode"("sorbentId");

-- CreateIndex
CREATE UNIQUE INDEX "Barcode_labId_code_key" ON "Barcode"("labId", "code");
