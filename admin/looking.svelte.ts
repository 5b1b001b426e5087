// What a page asks when it is opened, asked again by itself once the server answers.
import { onHeard } from './ask.ts';

/**
 * Looks now, and whenever what `look` reads at its beginning changes; again after each answer of the server as long as
 * `isInVain`. Called while a component is made.
 */
export function looking(look: () => Promise<unknown>, isInVain: () => boolean): void {
  $effect(() => {
    void look();
    return onHeard((answers) => answers && isInVain() && void look());
  });
}
