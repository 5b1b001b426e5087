// The learning room's door for the other rooms.
export { startLearning, type LearningLater } from './background.ts';
export { learnAgain } from './relearn.ts';
