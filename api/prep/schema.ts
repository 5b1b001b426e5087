// What GraphQL knows of needs and the prep sheet: each part in its file.
import './need-type.ts';
import './step-type.ts';
import './sheet-type.ts';
import './need-told-type.ts';
import './available-type.ts';
import './settings-type.ts';
import './day-type.ts';
