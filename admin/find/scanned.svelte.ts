// Which container somebody just came to by its code: there the three things one does with it lie under the thumb.

let label = $state<string | null>(null);

export const scanned = {
  get label(): string | null {
    return label;
  },
};

export const cameByCode = (to: string): void => {
  label = to;
};
export const putAway = (): void => {
  label = null;
};
