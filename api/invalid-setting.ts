// A setting has a value it cannot have; the message names it and says what would be right.

export class InvalidSetting extends Error {
  readonly path: string;
  readonly expected: string;
  constructor(path: string, value: string, expected: string) {
    super(`invalid ${path}: ${value}, should be ${expected}`);
    this.name = 'InvalidSetting';
    this.path = path;
    this.expected = expected;
  }
}
