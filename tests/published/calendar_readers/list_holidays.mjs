// Prints the public holidays that the package date-holidays knows, as one JSON list per region, in order.
// Usage: node list_holidays.mjs FOLDER-WITH-node_modules FIRST-YEAR LAST-YEAR COUNTRY[-STATE]...
import { createRequire } from "node:module";
import { resolve } from "node:path";

const [folder, first, last, ...regions] = process.argv.slice(2);
const library = createRequire(resolve(folder, "package.json"))("date-holidays");
const Holidays = library.default ?? library;

for (const region of regions) {
  const [country, state] = region.split("-");
  const table = new Holidays(country, state);
  const found = [];
  for (let year = Number(first); year <= Number(last); year += 1) {
    for (const holiday of table.getHolidays(year, "en")) {
      if (holiday.type === "public") {
        found.push({ day: holiday.date.slice(0, 10), name: holiday.name });
      }
    }
  }
  console.log(JSON.stringify(found));
}
