// What GraphQL knows of lots compared: each part in its file.
import './run-type.ts';
import './check-type.ts';
import './verdict-type.ts';
import './told-type.ts';
import './chart-type.ts';
import './grade-type.ts';
