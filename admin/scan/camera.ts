// Why there is no live camera, said plainly with what to do instead.

export type Trouble = 'insecure' | 'none' | 'refused' | 'busy';

/** Whether a page may ask for the camera at all: browsers give it to HTTPS and to this machine only. */
export const troubleBefore = (isSecure: boolean, hasDevices: boolean): Trouble | null =>
  !isSecure ? 'insecure' : hasDevices ? null : 'none';

/** By the name of what getUserMedia throws (Media Capture and Streams, section 10.2). */
export function troubleOf(error: unknown): Trouble {
  const name = error instanceof Error ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'refused';
  if (name === 'NotReadableError' || name === 'AbortError') return 'busy';
  return 'none';
}

export const troubleWords: Record<Trouble, string> = {
  insecure:
    'The live camera needs HTTPS, and this page came without. Take a photo of the label instead, or ask whoever runs Drumkeep for a certificate.',
  none: 'No camera is found on this machine. Take a photo, choose a picture, or type the code.',
  refused:
    'The camera was refused. Allow it for this page in the browser’s settings and scan again, or take a photo of the label.',
  busy: 'Something else uses the camera. Close that and scan again, or take a photo of the label.',
};

/** The same symbol seen again within this time is the same scan, ms. */
export const sameAgainMs = 2_500;
