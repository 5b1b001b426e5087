// What GraphQL knows of learning from the balance: what was learned, the weighings, and what is said of them.
import './weighing-type.ts';
import './learned-type.ts';
import './told-type.ts';
