// Reads a calendar file with a parser of others and prints what it found, a line an event: when it starts by the
// clocks of a place, how many minutes it lasts, its title. The clocks are those of this program's own time zone tables.
const [, , parser, file, zone] = process.argv;
const ICAL = require(parser);
const calendar = new ICAL.Component(ICAL.parse(require("fs").readFileSync(file, "utf8")));
const clock = new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short", timeStyle: "short" });
for (const part of calendar.getAllSubcomponents("vevent")) {
  const event = new ICAL.Event(part);
  const [from, to] = [event.startDate, event.endDate];
  const starts = from.isDate ? from.toString() : clock.format(from.toJSDate());
  const minutes = from.isDate ? "day" : (to.toJSDate() - from.toJSDate()) / 60000;
  console.log([starts, minutes, event.uid, event.summary, from.zone.tzid].join("|"));
}
