// What a column of the lab's list may be, the words it goes by, and which words of a cell mean what.

export const fields = [
  'SORBENT',
  'SUPPLIER',
  'LOT_NUMBER',
  'KIND',
  'COUNT',
  'AMOUNT',
  'LEFT',
  'PLATES',
  'ROOM',
  'RECEIVED',
  'OPENED',
  'RETEST',
  'CLOSURE',
  'VESSEL',
  'INNER_DIAMETER',
  'HEIGHT',
  'MOUTH_DIAMETER',
  'TARE',
  'START_WATER',
  'CERTIFICATE_WATER',
  'CERTIFICATE_MAX_WATER',
  'BACKING',
  'LAYER_THICKNESS',
  'PLATE_SIZE',
  'OLD_CODE',
  'NOTE',
] as const;
export type Field = (typeof fields)[number];

/** What a field is called in a sentence. */
export const fieldWord: Record<Field, string> = {
  SORBENT: 'sorbent',
  SUPPLIER: 'supplier',
  LOT_NUMBER: 'lot number',
  KIND: 'kind of pack',
  COUNT: 'how many alike',
  AMOUNT: 'amount',
  LEFT: 'amount left',
  PLATES: 'plates',
  ROOM: 'room',
  RECEIVED: 'received on',
  OPENED: 'opened on',
  RETEST: 'retest on',
  CLOSURE: 'how it is closed',
  VESSEL: 'vessel',
  INNER_DIAMETER: 'inner diameter',
  HEIGHT: 'inner height',
  MOUTH_DIAMETER: 'diameter of the mouth',
  TARE: 'weight of the empty vessel',
  START_WATER: 'water in it',
  CERTIFICATE_WATER: 'water on the certificate',
  CERTIFICATE_MAX_WATER: 'most water on the certificate',
  BACKING: 'backing',
  LAYER_THICKNESS: 'layer',
  PLATE_SIZE: 'plate size',
  OLD_CODE: 'code until now',
  NOTE: 'note',
};

/** Headings as labs write them: English, German, French, Spanish, Finnish; without accents. From memory. */
export const headingWords: Record<Field, readonly string[]> = {
  SORBENT:
    'sorbent|adsorbent|material|product|name|item|substance|stationary phase|phase|sorbens|adsorbens|produkt|bezeichnung|stoff|artikel|produit|designation|nom|adsorbant|producto|nombre|adsorbente|denominacion|sorbentti|adsorbentti|tuote|nimi|aine'.split(
      '|',
    ),
  SUPPLIER:
    'supplier|vendor|manufacturer|maker|made by|from whom|lieferant|hersteller|fournisseur|fabricant|proveedor|fabricante|toimittaja|valmistaja'.split(
      '|',
    ),
  LOT_NUMBER:
    'lot|lot number|lot no|lot nr|lot id|batch|batch number|batch no|charge|chargennummer|chargen nr|charge nr|ch b|los|losnummer|lot n|numero de lot|no de lot|n lot|n de lot|lote|numero de lote|n de lote|n lote|era|eranumero|era nro|valmistusera'.split(
      '|',
    ),
  KIND: 'kind|type|kind of pack|pack|packaging|pack type|container|what|art|typ|gebinde|gebindeart|verpackung|conditionnement|emballage|contenant|tipo|envase|tipo de envase|pakkaus|pakkaustyyppi|laji|tyyppi'.split(
    '|',
  ),
  COUNT:
    'count|how many|qty|quantity|packs|number of packs|pieces|pcs|containers|anzahl|stuck|stuckzahl|stk|nombre|nb|unites|cantidad|unidades|numero de envases|lukumaara|kpl|montako'.split(
      '|',
    ),
  AMOUNT:
    'amount|size|pack size|content|contents|weight|net weight|mass|grams|in each|menge|inhalt|gewicht|fullmenge|nettogewicht|gebindegrosse|packungsgrosse|quantite|masse|poids|contenu|contenance|taille|peso|masa|contenido|tamano|maara|paino|massa|sisalto|pakkauskoko'.split(
      '|',
    ),
  LEFT: 'left|amount left|remaining|remainder|still in it|rest|restmenge|restbestand|bestand|reste|restant|quantite restante|restante|cantidad restante|queda|existencias|jaljella|jaljella oleva'.split(
    '|',
  ),
  PLATES:
    'plates|number of plates|plates per box|plates left|platten|plattenzahl|anzahl platten|plaques|nombre de plaques|placas|numero de placas|levyt|levyja|levyjen maara'.split(
      '|',
    ),
  ROOM: 'room|location|place|where|stored|stored in|storage|store|stands in|raum|standort|lagerort|ort|lager|salle|piece|emplacement|lieu|lieu de stockage|local|sala|ubicacion|lugar|cuarto|almacen|huone|paikka|sijainti|sailytys|sailytyspaikka'.split(
    '|',
  ),
  RECEIVED:
    'received|received on|date received|receipt|arrived|arrival|delivered|delivery|delivery date|came in|eingang|eingangsdatum|eingegangen|erhalten|geliefert|lieferdatum|recu|recu le|reception|date de reception|livraison|livre le|recibido|recibido el|recepcion|fecha de recepcion|llegada|saapunut|saapumispaiva|vastaanotettu|toimitettu'.split(
      '|',
    ),
  OPENED:
    'opened|opened on|open since|date opened|opening date|geoffnet|geoffnet am|offen seit|anbruch|anbruchdatum|angebrochen|ouvert|ouvert le|ouvert depuis|date d ouverture|ouverture|abierto|abierto el|abierto desde|apertura|fecha de apertura|avattu|avauspaiva|avaamispaiva|auki alkaen'.split(
      '|',
    ),
  RETEST:
    'retest|retest on|retest date|expiry|expiry date|expires|exp|exp date|best before|use by|verfall|verfallsdatum|haltbar bis|ablauf|ablaufdatum|retestdatum|expiration|peremption|date de peremption|date limite|caducidad|fecha de caducidad|caduca|vencimiento|parasta ennen|viimeinen kayttopaiva|uusintatestaus'.split(
      '|',
    ),
  CLOSURE:
    'closure|closed|lid|state|status|how closed|condition|verschluss|verschlossen|deckel|zustand|fermeture|couvercle|etat|cierre|tapa|estado|kansi|sulkeminen|tila'.split(
      '|',
    ),
  VESSEL:
    'vessel|bottle|jar|drum|vessel type|gefass|behalter|flasche|recipient|flacon|pot|recipiente|frasco|bote|astia|pullo|purkki'.split(
      '|',
    ),
  INNER_DIAMETER:
    'inner diameter|diameter|inside diameter|durchmesser|innendurchmesser|diametre|diametre interieur|diametro|diametro interior|halkaisija|sisahalkaisija'.split(
      '|',
    ),
  HEIGHT: 'height|inner height|hohe|innenhohe|hauteur|hauteur interieure|altura|korkeus|sisakorkeus'.split('|'),
  MOUTH_DIAMETER:
    'mouth|mouth diameter|opening diameter|offnung|offnungsdurchmesser|mundung|diametre du col|col|boca|diametro de boca|suuaukko'.split(
      '|',
    ),
  TARE: 'tare|tare weight|empty weight|tara|leergewicht|taragewicht|poids a vide|taara'.split('|'),
  START_WATER:
    'water|water content|water found|moisture|loss on drying|lod|kf|karl fischer|wasser|wassergehalt|feuchte|trocknungsverlust|eau|teneur en eau|humidite|perte a la dessiccation|agua|contenido de agua|humedad|vesi|vesipitoisuus|kosteus|kuivaushavio'.split(
      '|',
    ),
  CERTIFICATE_WATER:
    'certificate water|water certificate|water on certificate|water coa|coa water|wasser zertifikat|wasser laut zertifikat|eau certificat|agua certificado|vesi todistus'.split(
      '|',
    ),
  CERTIFICATE_MAX_WATER: 'max water|water max|water at most|wasser max|eau max|agua max|vesi max|vesi enintaan'.split(
    '|',
  ),
  BACKING: 'backing|support|plate support|trager|tragermaterial|soporte|tausta|taustamateriaali'.split('|'),
  LAYER_THICKNESS:
    'layer|layer thickness|thickness|schicht|schichtdicke|epaisseur|couche|espesor|capa|kerros|kerrospaksuus'.split(
      '|',
    ),
  PLATE_SIZE: 'plate size|format|plattenformat|plattengrosse|format des plaques|tamano de placa|levykoko'.split('|'),
  OLD_CODE:
    'code|id|label|no|nr|number|our code|our number|inventory number|inventory no|inv no|barcode|kennung|etikett|nummer|inventarnummer|code interne|etiquette|numero|codigo|etiqueta|koodi|tunnus|tunniste|numero interno'.split(
      '|',
    ),
  NOTE: 'note|notes|comment|comments|remark|remarks|bemerkung|bemerkungen|kommentar|notiz|remarque|remarques|commentaire|observacion|observaciones|comentario|comentarios|nota|notas|huomautus|huom|kommentti|lisatiedot'.split(
    '|',
  ),
};

/** A text without accents, case and punctuation, to be compared with words. */
export const plain = (text: string): string =>
  text
    .replace(/ß/g, 'ss')
    .replace(/[øØ]/g, 'o')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%]+/gu, ' ')
    .trim();

type Word = readonly [pattern: RegExp, meaning: string];
const meaning =
  <T extends string>(words: readonly (readonly [RegExp, T])[]) =>
  (text: string): T | null =>
    ((words as readonly Word[]).find(([pattern]) => pattern.test(plain(text)))?.[1] as T | null | undefined) ?? null;

/** Five languages, by the beginnings of words; from memory. */
export const kindMeant = meaning([
  [/\b(column|saule|colonne|columna|kolonni|pylvas)/, 'COLUMN'],
  [/\b(plates?|tlc|dc|platten?|plaques?|placas?|levy|levyt|ccm|ohutlevy\w*|plattenbox|plate box)\b/, 'PLATE_BOX'],
  [
    /\b(drums?|bottles?|jars?|packs?|bags?|cans?|tins?|tubs?|buckets?|pails?|fass|flaschen?|dosen?|beutel|eimer|gebinde|futs?|bidons?|flacons?|pots?|sacs?|seaux?|boites?|tambor|frascos?|botes?|botellas?|bolsas?|cubos?|tynnyri|pullo|purkki|pussi|astia|sanko|powder|pulver|bulk)/,
    'DRUM',
  ],
]);

export const closureMeant = meaning([
  [
    /\b(unopened|sealed|new|full|original|versiegelt|ungeoffnet|neu|scelle|non ouvert|neuf|precintado|sin abrir|nuevo|sinetoity|avaamaton|uusi)\b/,
    'SEALED',
  ],
  [
    /\b(loose|loosely|covered|foil|lose|abgedeckt|folie|couvert|papier alu|tapado|papel|loysasti|peitetty|folio)\b/,
    'LOOSELY_COVERED',
  ],
  [/\b(tight|tightly|dicht|luftdicht|etanche|hermetique|hermetico|tiivis|tiiviisti)\b/, 'TIGHT'],
  [
    /\b(well closed|closed|shut|lid on|zu|geschlossen|verschlossen|ferme|fermee|bouche|cerrado|cerrada|suljettu|kiinni)\b/,
    'WELL_CLOSED',
  ],
  [/\b(open|lid off|offen|ouvert|ouverte|abierto|abierta|auki|avoin)\b/, 'OPEN'],
] as const);

export const backingMeant = meaning([
  [/\b(glass|glas|verre|vidrio|lasi)/, 'GLASS'],
  [/\b(alu|aluminium|aluminum|aluminio|alumiini|foil|folie)/, 'ALUMINIUM'],
  [/\b(plastic|plastik|kunststoff|polyester|plastique|plastico|muovi)/, 'PLASTIC'],
] as const);

/** "no", "-", "not opened": nothing happened. */
export const isNo = (text: string): boolean =>
  /^(no|not?|nein|non|ei|never|nie|jamais|nunca|unopened|not opened|sealed|none|n a|na|ungeoffnet|sin abrir|avaamaton|)$/.test(
    plain(text),
  );

/** What begins a line of sums. */
export const isTotal = (text: string): boolean =>
  /^(grand )?(total|totals|sum|summe|gesamt|gesamtsumme|totaux|somme|suma|yhteensa|summa)\b/.test(plain(text));

/** A first guess of a sorbent's class from its name, for a sorbent that is made. From memory. */
export function classMeant(name: string): string | null {
  const text = plain(name);
  if (/\b(c18|rp ?18|ods|octadecyl)\b/.test(text)) return 'c18';
  if (/\b(alumina|alox|aluminiumoxid\w*|aluminium oxide|aluminum oxide|alumine|alumiinioksidi)\b/.test(text))
    return 'alumina';
  if (/\b(magnesium silicate|magnesiumsilikat\w*|silicate de magnesium|silicato de magnesio)\b/.test(text))
    return 'magnesium silicate';
  if (/\b(cellulose|zellulose|celulosa|selluloosa)\b/.test(text)) return 'cellulose';
  if (/\b(silica|kieselgel\w*|silicagel\w*|silice|silicage|piidioksidi|silikageeli|si ?60|sio2)\b/.test(text))
    return 'silica';
  return null;
}
