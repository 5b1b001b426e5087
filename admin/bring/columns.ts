// What a column of a list may be, in the words of the page, in the order in which one looks for them.

export const columnWords = {
  SORBENT: 'sorbent',
  SUPPLIER: 'supplier',
  LOT_NUMBER: 'lot number',
  OLD_CODE: 'your code until now',
  KIND: 'kind of pack',
  AMOUNT: 'amount in each',
  LEFT: 'amount left',
  PLATES: 'plates in each',
  COUNT: 'how many alike',
  ROOM: 'room',
  RECEIVED: 'received on',
  OPENED: 'opened on',
  CLOSURE: 'how it is closed',
  RETEST: 'retest on',
  VESSEL: 'vessel',
  INNER_DIAMETER: 'inner diameter',
  HEIGHT: 'inner height',
  MOUTH_DIAMETER: 'diameter of the mouth',
  TARE: 'weight of the empty vessel',
  START_WATER: 'water when it came in',
  CERTIFICATE_WATER: 'water on the certificate',
  CERTIFICATE_MAX_WATER: 'at most, on the certificate',
  BACKING: 'backing of the plates',
  LAYER_THICKNESS: 'layer of the plates',
  PLATE_SIZE: 'size of the plates',
  NOTE: 'note',
} as const;

export type Field = keyof typeof columnWords;
export const isField = (word: string): word is Field => word in columnWords;

/** Without these nothing can be booked. */
export const needed: readonly Field[] = ['SORBENT', 'LOT_NUMBER', 'AMOUNT', 'ROOM'];
