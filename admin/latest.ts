// One question at a time while somebody slides or types: the latest waits, those between are left out.

/** The latest question is asked as soon as the one before is answered; those between are left out. */
export function latestOnly<Q, A>(ask: (question: Q) => Promise<A>, heard: (question: Q, answer: A) => void) {
  let underWay = false;
  let next: { question: Q } | null = null;
  async function run(question: Q): Promise<void> {
    underWay = true;
    try {
      const answer = await ask(question);
      if (next === null) heard(question, answer);
    } finally {
      underWay = false;
      const waiting = next;
      next = null;
      if (waiting) await run(waiting.question);
    }
  }
  return {
    ask(question: Q): Promise<void> {
      if (!underWay) return run(question);
      next = { question };
      return Promise.resolve();
    },
    forget(): void {
      next = null;
    },
  };
}
