// Reads calendar files with ical.js and prints what it understood, one JSON list per file.
// Usage: node read_with_ical_js.mjs FOLDER-WITH-node_modules FILE...
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";

const [folder, ...files] = process.argv.slice(2);
const ICAL = createRequire(resolve(folder, "package.json"))("ical.js");
const library = ICAL.default ?? ICAL;

for (const file of files) {
  const calendar = new library.Component(library.parse(readFileSync(file, "utf-8")));
  library.TimezoneService.reset();
  for (const zone of calendar.getAllSubcomponents("vtimezone")) {
    library.TimezoneService.register(zone);
  }
  const components = ["vevent", "vtodo"].flatMap((kind) => calendar.getAllSubcomponents(kind));
  const entries = components.map((component) => {
    const event = new library.Event(component);
    const due = component.getFirstPropertyValue("due");
    return {
      uid: event.uid,
      start: event.startDate.toUnixTime(),
      end: (due ?? event.endDate).toUnixTime(),
      summary: event.summary,
      description: event.description ?? "",
      location: event.location ?? "",
      geo: component.getFirstPropertyValue("geo"),
      alarms: component
        .getAllSubcomponents("valarm")
        .map((alarm) => alarm.getFirstPropertyValue("trigger").toSeconds()),
    };
  });
  console.log(JSON.stringify(entries));
}
