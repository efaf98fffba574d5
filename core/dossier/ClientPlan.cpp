#include "dossier/ClientPlan.h"

#include <algorithm>
#include <cmath>

#include "dossier/Sheet.h"

namespace sumpwright::dossier {
namespace {

constexpr double kGutter_mm = 9.0;
constexpr double kPartGap_mm = 3.2;
constexpr double kTightGap_mm = 1.8;     // where that saves a page
constexpr double kStray_mm = 25.0;       // less text than this is no page
constexpr double kSeenHeight_mm = 84.0;  // the walls unrolled
constexpr double kLeastText_mm = 20.0;   // less than this below the plan is left white

constexpr double kColumn_mm = 87.5;  // half a page of A4

/// Two on A4 upright, three across its long side.
int columnsOf(const Sheet& sheet) {
  const double width = sheet.width_mm - 2 * kMargin_mm;
  return std::max(2,
                  static_cast<int>(std::lround((width + kGutter_mm) / (kColumn_mm + kGutter_mm))));
}

double columnWidth_mm(const Sheet& sheet) {
  const int columns = columnsOf(sheet);
  const double width = sheet.width_mm - 2 * kMargin_mm;
  return std::min(kColumn_mm, (width - kGutter_mm * (columns - 1)) / columns);
}

struct Pages {
  const Sheet& sheet;
  Document document;
  double gap_mm = kPartGap_mm;  ///< between parts
  double last_mm = 0.0;         ///< of text on a last page that holds nothing else
  double end_y = 0.0;           ///< where the text of the last page ends
  bool last_alone = false;      ///< what stands last has a page of its own
  double width() const { return sheet.width_mm - 2 * kMargin_mm; }
  double bottom() const { return sheet.height_mm - kMargin_mm - footHeight_mm(sheet); }
  Sketch add() {
    document.pages.push_back({sheet.width_mm, sheet.height_mm, {}});
    return Sketch(document.pages.back());
  }
};

/// All columns, from there down.
Region textRegion(const Pages& pages, double top) {
  const int columns = columnsOf(pages.sheet);
  const double column = columnWidth_mm(pages.sheet);
  const double gutter = (pages.width() - columns * column) / (columns - 1);
  return {kMargin_mm, top, pages.bottom() - 1.5, column, gutter, columns, true};
}

std::string underTitle(const Sheet& sheet) {
  const std::string& client = sheet.job().client;
  return forWhom(sheet,
                 sheet.desk.say(client.empty() ? sheet.front.for_nobody : sheet.front.for_client,
                                {base::text("client", client)}));
}

/// Where a sheet lies, its text stands beside the plan: below, neither had the height it needs.
bool textIsBeside(const Sheet& sheet) { return sheet.width_mm > sheet.height_mm; }

Rows planHead(const Pages& pages) {
  const Sheet& sheet = pages.sheet;
  return headRows(sheet, pages.width(), sheet.desk.say(sheet.front.title), underTitle(sheet));
}

Rows laterHead(const Pages& pages) {
  const Sheet& sheet = pages.sheet;
  return laterHeadRows(sheet, pages.width(), sheet.desk.say(sheet.front.title));
}

/// The first page of a sheet that lies: head; verdict and waivers over the text in the first
/// column; plan and strip over the others. Gives the room for the text.
Region firstPageBeside(Pages& pages, const Rows& waivers) {
  const Sheet& sheet = pages.sheet;
  const double column = columnWidth_mm(sheet);
  const double figures = pages.width() - column - kGutter_mm;
  Sketch sketch = pages.add();
  const double top = stack(sketch, planHead(pages), {kMargin_mm, kMargin_mm});
  const Rows strip = stripRows(sheet, figures);
  const PlanParts drawn = planParts(sheet, figures, pages.bottom() - top - heightOf(strip) - 2.0);
  Point right{kMargin_mm + column + kGutter_mm, top};
  for (const Rows* part : {&drawn.plan, &strip}) right.y = stack(sketch, *part, right);
  Point left{kMargin_mm, top};
  sketch.tagged("set-out");
  for (const Rows& part :
       {verdictRows(sheet, column), waivers, settingOutRows(sheet, column), Rows{drawn.key}}) {
    left.y = stack(sketch, part, left);
  }
  return {kMargin_mm, left.y + 3.0, pages.bottom() - 1.5, column, kGutter_mm, 1, true};
}

/// The first page of one that stands: head, verdict, waivers, plan, strip; the text below them.
Region firstPageOver(Pages& pages, const Rows& waivers) {
  const Sheet& sheet = pages.sheet;
  const Rows head = planHead(pages);
  const Rows verdict = verdictRows(sheet, pages.width());
  const Rows strip = stripRows(sheet, pages.width());
  const double fixed = heightOf(head) + heightOf(verdict) + heightOf(waivers) + heightOf(strip);
  const double room = pages.bottom() - kMargin_mm - fixed - 2.0;
  const Rows plan = planRows(sheet, pages.width(), room);
  Sketch sketch = pages.add();
  Point at{kMargin_mm, kMargin_mm};
  for (const Rows* part :
       std::initializer_list<const Rows*>{&head, &verdict, &waivers, &plan, &strip}) {
    at.y = stack(sketch, *part, at);
  }
  return textRegion(pages, at.y + 4.0);
}

using Write = void (*)(Writer&, const Sheet&);

/// The parts of the text, in the order a householder asks.
std::vector<Write> planTexts() {
  return {writeFindings,  writeOtherSumps, writeMargins, writeExpect,     writePlaces,
          writeNotLooked, writeUnjudged,   writeScore,   writeHoldPoints, writeCautions};
}

std::vector<Write> proposalTexts() {
  return {writeFindings,  writeOtherSumps, writeExpect, writeSeen, writeRunning, writePlaces,
          writeNotLooked, writeUnjudged,   writeNeeds,  writeCare, writeRetest,  writeTerms};
}

std::vector<Rows> allText(const Sheet& sheet, const std::vector<Write>& writers, double width_mm) {
  std::vector<Rows> parts;
  for (const Write write : writers) {
    Writer w(sheet.desk, width_mm);
    write(w, sheet);
    Rows rows = w.take();
    if (!rows.empty()) parts.push_back(std::move(rows));
  }
  return parts;
}

Rows joined(const std::vector<Rows>& parts, double gap_mm) {
  Rows out;
  for (const Rows& part : parts) {
    if (!out.empty()) out.push_back({gap_mm, {}, false});
    out.insert(out.end(), part.begin(), part.end());
  }
  return out;
}

/// Whether rows stand whole in a region.
bool fits(const Rows& rows, const Region& region) {
  drawing::DrawList scratch;
  Sketch sketch(scratch);
  double end = 0.0;
  return flow(sketch, rows, 0, region, end) == rows.size();
}

/// Where the first part is too tall for what is left of the first page, the first of the others
/// that stands there whole goes before it rather than leaving the page white.
/// What comes last stays last.
void fillFirstPage(std::vector<Rows>& parts, const Region& region) {
  constexpr std::ptrdiff_t kLast = 2;
  if (parts.size() <= static_cast<std::size_t>(kLast)) return;
  drawing::DrawList scratch;
  Sketch sketch(scratch);
  double end = 0.0;
  if (flow(sketch, parts.front(), 0, region, end) > 0) return;
  const auto end_of_choice = parts.end() - kLast;
  const auto other = std::find_if(parts.begin(), end_of_choice,
                                  [&](const Rows& part) { return fits(part, region); });
  if (other != end_of_choice) std::rotate(parts.begin(), other, other + 1);
}

/// Into what the first page leaves, then further pages until everything stands somewhere; `wide` on
/// top of the first of them, over all columns.
void flowAll(Pages& pages, std::vector<Rows> parts, Region region, Rows wide) {
  const bool room = region.bottom - region.top >= kLeastText_mm;
  if (room) fillFirstPage(parts, region);
  const Rows rows = joined(parts, pages.gap_mm);
  std::size_t next = 0;
  if (room) {
    Sketch sketch(pages.document.pages.back());
    sketch.tagged("text");
    pages.end_y = region.top;
    next = flow(sketch, rows, 0, region, pages.end_y);
  }
  while (next < rows.size()) {
    Sketch sketch = pages.add();
    region = textRegion(pages, stack(sketch, laterHead(pages), {kMargin_mm, kMargin_mm}));
    region.more_follows = false;
    if (!wide.empty()) {
      region.top = stack(sketch.tagged("text"), wide, {kMargin_mm, region.top}) + kPartGap_mm;
      wide.clear();
    }
    sketch.tagged("text");
    const std::size_t before = next;
    next = flow(sketch, rows, next, region, pages.end_y);
    pages.last_mm = pages.end_y - region.top;
    if (next == before) break;  // a row taller than a page: nothing can place it
  }
}

/// Below the text of the last page, over all columns, or on one more.
void addLast(Pages& pages, const Rows& rows) {
  if (rows.empty()) return;
  const bool room =
      pages.end_y > 0.0 && pages.end_y + 2.0 * kPartGap_mm + heightOf(rows) < pages.bottom();
  const bool beside = pages.document.pages.size() == 1 && textIsBeside(pages.sheet);
  if (room && !beside) {
    Sketch sketch(pages.document.pages.back());
    stack(sketch.tagged("text"), rows, {kMargin_mm, pages.end_y + 2.0 * kPartGap_mm});
    pages.last_mm += heightOf(rows);
    return;
  }
  Sketch sketch = pages.add();
  const double top = stack(sketch, laterHead(pages), {kMargin_mm, kMargin_mm});
  stack(sketch.tagged("text"), rows, {kMargin_mm, top});
  pages.last_mm = heightOf(rows);
  pages.last_alone = true;
}

/// What stands over all columns: on top of the second page, and at the end.
struct WideRows {
  Rows second;
  Rows last;
};

Pages composed(const Sheet& sheet, const std::vector<Write>& writers, const WideRows& wide,
               double gap_mm) {
  Pages pages{sheet, {}, gap_mm};
  Document& document = pages.document;
  document.width_mm = sheet.width_mm;
  document.height_mm = sheet.height_mm;
  document.title = documentTitle(sheet, sheet.desk.say(sheet.front.title));
  document.author = sheet.job().surveyor;
  document.subject = sheet.desk.say("paper.subject");

  const double column = columnWidth_mm(sheet);
  const bool beside = textIsBeside(sheet);
  Rows waivers = waiverRows(sheet, beside ? column : pages.width());
  std::vector<Rows> parts = allText(sheet, writers, column);
  // Many or long waivers stand in the text, so that the plan keeps at least half of the page.
  const bool crowded = heightOf(waivers) > 0.22 * sheet.height_mm;
  if (crowded) {
    parts.insert(parts.begin(), waiverRows(sheet, column));
    waivers.clear();
  }
  const Region room = beside ? firstPageBeside(pages, waivers) : firstPageOver(pages, waivers);
  flowAll(pages, std::move(parts), room, wide.second);
  addLast(pages, wide.last);
  const int count = static_cast<int>(document.pages.size());
  for (int i = 0; i < count; ++i) {
    Sketch sketch(document.pages[static_cast<std::size_t>(i)]);
    paintFoot(sketch, sheet, i + 1, count);
  }
  placeLogo(document, sheet.options.letterhead);
  return pages;
}

/// Two parts in the first two columns, as one row.
Row besideRow(const Rows& left, const Rows& right, double column_mm) {
  return {std::max(heightOf(left), heightOf(right)),
          [=](Sketch& sketch, Point at) {
            stack(sketch, left, at);
            stack(sketch, right, {at.x + column_mm + kGutter_mm, at.y});
          },
          true};
}

/// The last two parts go over to the page of what stands last: it is not left there alone.
Pages withCompany(const Sheet& sheet, std::vector<Write> writers, WideRows wide) {
  const double column = columnWidth_mm(sheet);
  const auto last = writers.end() - 2;
  const std::vector<Rows> parts = allText(sheet, {last, writers.end()}, column);
  writers.erase(last, writers.end());
  Rows together;
  if (parts.size() == 2) {
    together.push_back(besideRow(parts[0], parts[1], column));
    together.push_back({2.0 * kPartGap_mm, {}, false});
  }
  together.insert(together.end(), wide.last.begin(), wide.last.end());
  wide.last = std::move(together);
  return composed(sheet, writers, wide, kPartGap_mm);
}

/// With less room between its parts where that saves a last page with a few lines on it.
Document planWith(const Sheet& sheet, const std::vector<Write>& writers,
                  const WideRows& wide = {}) {
  Pages airy = composed(sheet, writers, wide, kPartGap_mm);
  if (airy.last_alone && writers.size() > 2) {
    Pages tight = composed(sheet, writers, wide, kTightGap_mm);
    if (!tight.last_alone) return std::move(tight.document);
    Pages company = withCompany(sheet, writers, wide);
    if (company.document.pages.size() <= airy.document.pages.size()) {
      return std::move(company.document);
    }
  }
  const bool stray = airy.document.pages.size() > 1 && airy.last_mm < kStray_mm;
  if (!stray) return std::move(airy.document);
  Pages tight = composed(sheet, writers, wide, kTightGap_mm);
  const bool saves = tight.document.pages.size() < airy.document.pages.size();
  return std::move(saves ? tight.document : airy.document);
}

}  // namespace

Document clientPlan(const siting::Study& study, const drawing::Voice& voice,
                    const ClientPlanOptions& options) {
  return planWith(Sheet(study, voice, options), planTexts());
}

Document proposal(const siting::Study& study, const drawing::Voice& voice,
                  const ClientPlanOptions& options) {
  Sheet sheet(study, voice, options);
  sheet.front = {"paper.proposal.title", "paper.proposal.for-client", "paper.proposal.for-nobody"};
  const double width = sheet.width_mm - 2 * kMargin_mm;
  Writer seen(sheet.desk, width);
  const Rows figure = elevationRows(sheet, width, kSeenHeight_mm);
  if (!figure.empty()) seen.heading(sheet.desk.say("paper.seen.walls"));
  seen.append(figure);
  Writer consent(sheet.desk, width);
  writeConsent(consent, sheet);
  return planWith(sheet, proposalTexts(), {seen.take(), consent.take()});
}

}  // namespace sumpwright::dossier
