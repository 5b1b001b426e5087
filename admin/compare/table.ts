// What a table of plates or columns may hold, for whoever pastes one.
export const plateTable = {
  label: 'Paste a table, or drop a .csv here',
  hint: 'A row a plate. Headings such as lot, tank, plate, box, container, date, by, water %; every other column is a compound with its Rf, or “Sudan red mm” and “front mm”.',
  nothing: 'nothing was written',
} as const;
