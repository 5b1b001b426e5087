// Common vessels with their inner sizes, so that nobody measures a beaker to pour into it.

export interface CommonVessel {
  name: string;
  innerDiameterMm: number;
  heightMm: number;
  mouthDiameterMm: number;
  volumeMl: number;
  source: string;
}

// Outer sizes of the low form are those of ISO 3819 (from memory); inner ones are 2 wall thicknesses less.
const lowForm = 'low form as in ISO 3819, from memory; wall taken off';
const jar = 'wide-mouth screw jar, from memory; measure one of yours';
const drum = 'fibre or plastic drum, from memory; measure one of yours';
const dish = 'from memory; measure one of yours';

const beaker = (volumeMl: number, innerDiameterMm: number, heightMm: number): CommonVessel => ({
  name: `beaker ${volumeMl} mL`,
  innerDiameterMm,
  heightMm,
  mouthDiameterMm: innerDiameterMm,
  volumeMl,
  source: lowForm,
});

const vessel = (name: string, sizes: readonly [number, number, number, number], source: string): CommonVessel => {
  const [innerDiameterMm, heightMm, mouthDiameterMm, volumeMl] = sizes;
  return { name, innerDiameterMm, heightMm, mouthDiameterMm, volumeMl, source };
};

export const commonVessels: readonly CommonVessel[] = [
  beaker(100, 46, 68),
  beaker(250, 66, 92),
  beaker(400, 76, 107),
  beaker(600, 86, 122),
  beaker(1000, 101, 141),
  beaker(2000, 127, 181),
  vessel('jar 100 mL', [48, 62, 40, 100], jar),
  vessel('jar 250 mL', [66, 82, 54, 250], jar),
  vessel('jar 500 mL', [80, 108, 66, 500], jar),
  vessel('jar 1 L', [95, 150, 80, 1000], jar),
  vessel('jar 2.5 L', [134, 190, 100, 2500], jar),
  vessel('drum 5 L', [170, 235, 150, 5000], drum),
  vessel('drum 10 L', [215, 290, 190, 10_000], drum),
  vessel('drum 25 L', [285, 410, 260, 25_000], drum),
  vessel('drum 50 L', [360, 510, 330, 50_000], drum),
  vessel('crystallising dish 150 mm', [143, 73, 143, 1100], dish),
  vessel('drying tray 300 mm', [300, 30, 300, 2100], dish),
];
