// The words of the stock that come from a fixed list, each with its meaning.
import { builder } from '../builder.ts';

const meaning = <K extends string>(of: Record<K, string>) =>
  Object.fromEntries(Object.entries<string>(of).map(([name, description]) => [name, { description }])) as Record<
    K,
    { description: string }
  >;

export const ContainerKindEnum = builder.enumType('ContainerKind', {
  description: 'What holds the sorbent.',
  values: meaning({
    DRUM: 'A drum, bottle or jar as it came from the supplier.',
    PORTION: 'Sorbent poured into a vessel of its own.',
    PLATE_BOX: 'Plates, counted, with their layer as sorbent.',
    COLUMN: 'A packed bed, open at its top or capped.',
  }),
});

export const ClosureEnum = builder.enumType('Closure', {
  description: 'How the mouth of a container stands. The classes are those of USP <671>.',
  values: meaning({
    OPEN: 'No closure at all.',
    LOOSELY_COVERED: 'A cover with a gap: film, foil, a lid laid on.',
    WELL_CLOSED: 'A snap lid or a clipped drum: at most 2000 mg water a day and litre at 75 % RH, 23 °C.',
    TIGHT: 'A screw cap with a liner: at most 100 mg a day and litre at 75 % RH, 23 °C.',
    SEALED: 'Sealed as received, or heat-sealed: nothing gets in.',
  }),
});

export const ScoopingEnum = builder.enumType('Scooping', {
  description: 'How a scoop is taken from a container.',
  values: meaning({
    TOP: 'Off the top, where it is wettest.',
    SIDE: 'From the side, through all its depth.',
    ROLLED: 'After rolling the container, so that it is mixed.',
  }),
});

export const BackingEnum = builder.enumType('Backing', {
  description: 'What carries the layer of a plate.',
  values: meaning({ GLASS: 'Glass.', ALUMINIUM: 'Aluminium foil.', PLASTIC: 'Plastic film.' }),
});

export const ReactionEnum = builder.enumType('Reaction', {
  description: 'How a sorbent reacts in water.',
  values: meaning({ ACIDIC: 'Acidic.', NEUTRAL: 'Neutral.', BASIC: 'Basic.' }),
});

export const TargetPolicyEnum = builder.enumType('TargetPolicy', {
  description: 'What the water of a sorbent should be for its use: constant, not driest.',
  values: meaning({
    DRY: 'An upper end only: dried before use and kept dry.',
    AS_RECEIVED: "The lot's own water at receipt, with a band either side.",
    SET: 'Made up to a set water content, with a band either side.',
  }),
});

export const NumberOriginEnum = builder.enumType('NumberOrigin', {
  description: 'Where a number comes from.',
  values: meaning({
    TABLE: 'The table of the sorbent class that comes with Drumkeep.',
    CERTIFICATE: "The supplier's certificate of analysis.",
    MEASURED: 'Measured in this lab.',
    DEFAULT: 'A default for want of anything better.',
    UNKNOWN: 'Not known.',
  }),
});

export const ConfidenceEnum = builder.enumType('Confidence', {
  description: 'How sure a number is.',
  values: meaning({
    CONFIRMED: 'Seen in its source.',
    FROM_MEMORY: 'Recalled; the source was not seen.',
    DERIVED: 'Worked out from other numbers.',
    GUESS: 'A guess, to be measured.',
  }),
});

export const EventTypeEnum = builder.enumType('EventType', {
  description: 'What can happen to a container.',
  values: meaning({
    CAME_IN: 'It came in from the supplier.',
    OPENED: 'It was opened, and stands open.',
    CLOSED: 'It was closed.',
    MOVED: 'It was moved to another room.',
    PORTION_TAKEN: 'A portion was poured into a vessel; the lid was off for about five minutes.',
    PLATES_TAKEN: 'Plates were taken into a box of their own.',
    COLUMN_PACKED: 'A column was packed from it.',
    MIXED: 'It was mixed or rolled, so that its water is even.',
    DRIED: 'It was dried.',
    EQUILIBRATED: 'It stood over a salt or in air of one humidity until nothing changed.',
    WEIGHED: 'Its water was measured.',
    COUNTED: 'What is there was counted or weighed: the book follows.',
    TOUCHED_SOLVENT: 'It touched solvent or sample, and never goes to the oven.',
    HABIT_SET: 'How often it is opened, or how it is scooped, was set.',
    COMBINED: 'It was emptied into another container of the same lot.',
    LOST: 'Some of it was lost.',
    PRE_WASHED: 'Plates were pre-washed, and are wet with solvent.',
    SOLVENT_GONE: 'The solvent of the pre-wash is gone.',
    CONDITIONED: 'A column was wetted with its mobile phase.',
    INTERRUPTED: 'What was being done with it was interrupted.',
    SPENT_ON_CHECK: 'Some of it was spent on a check.',
    USED_UP: 'It was used up.',
    DISCARDED: 'Some or all of it was discarded.',
    NOT_FOUND: 'It was looked for and not found; the book keeps it as it was.',
    CORRECTED: 'An earlier event was taken back.',
  }),
});

export const BasisEnum = builder.enumType('Basis', {
  description: 'What a mass or a water content is counted on.',
  values: meaning({
    DRY: 'On dry sorbent: mass after 150 °C to constant mass.',
    AS_RECEIVED: 'On the mass as it is, water included: what the balance shows, what certificates say.',
  }),
});

export const WaterMethodEnum = builder.enumType('WaterMethod', {
  description: 'How water was measured.',
  values: meaning({
    LOSS_ON_DRYING: 'By the mass lost in an oven; solvent counts too.',
    KARL_FISCHER: 'By Karl Fischer titration; water only.',
    GROSS: 'The whole on the balance with its vessel; what it gained since the time before is learned from.',
  }),
});

export const WeighedPartEnum = builder.enumType('WeighedPart', {
  description: 'What a water measurement speaks of.',
  values: meaning({ WHOLE: 'The whole of the container, mixed.', SCOOP: 'The scoop that one takes next.' }),
});

export const PrewashDirectionEnum = builder.enumType('PrewashDirection', {
  description: 'Which way the solvent of a pre-wash ran; plates are developed the same way.',
  values: meaning({
    ALONG_HEIGHT: 'Along the height of the plate.',
    ALONG_WIDTH: 'Along the width of the plate.',
  }),
});

export const FrontEdgeEnum = builder.enumType('FrontEdge', {
  description: 'What became of the edge at the front, where a pre-wash leaves what it carried.',
  values: meaning({
    CUT: 'It was cut off.',
    MARKED: 'It was marked, and nothing is used beyond the mark.',
    LEFT: 'It was left as it is.',
  }),
});

export const PackingMethodEnum = builder.enumType('PackingMethod', {
  description: 'How a column was packed.',
  values: meaning({ DRY: 'Dry, with tapping.', SLURRY: 'As a slurry in solvent.' }),
});

export const PlateRegimeEnum = builder.enumType('PlateRegime', {
  description: 'How prepared plates are kept until they are spotted.',
  values: meaning({
    DRY_UNTIL_SPOTTED: 'Dry until spotted: oven, desiccator or dry box, and minutes once in room air.',
    EQUILIBRATED: 'Equilibrated at one humidity: good as long as the air stays there.',
  }),
});

/** The estimator's answer; here, since lists are narrowed by it. */
export const ExposureStateEnum = builder.enumType('ExposureState', {
  description: 'What to do with a container, by the water of its next scoop (for plates and columns: its mean).',
  values: meaning({
    GOOD: 'Good to use.',
    USE_SOON: 'Good now, out of its band soon.',
    REDRY: 'Past the upper end of its band, more likely than not: redry first.',
    TOO_DRY: 'Below the lower end of its band, more likely than not.',
    UNKNOWN: 'No air record, no starting water or no isotherm: weigh first.',
  }),
});
