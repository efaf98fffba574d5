#include "dossier/ClientPlan.h"

#include <algorithm>

#include "dossier/PlanPages.h"
#include "dossier/Sheet.h"

namespace sumpwright::dossier {
namespace {

constexpr double kTightGap_mm = 1.8;     // between parts, where that saves a page
constexpr double kStray_mm = 25.0;       // less text than this is no page
constexpr double kSeenHeight_mm = 84.0;  // the walls unrolled
std::string underTitle(const Sheet& sheet) {
  const std::string& client = sheet.job().client;
  return forWhom(sheet,
                 sheet.desk.say(client.empty() ? sheet.front.for_nobody : sheet.front.for_client,
                                {base::text("client", client)}));
}

Rows planHead(const Pages& pages) {
  const Sheet& sheet = pages.sheet;
  return headRows(sheet, pages.width(), sheet.desk.say(sheet.front.title), underTitle(sheet));
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
  // No picture of works that may not be done.
  const Rows figure = isStopped(sheet) ? Rows() : elevationRows(sheet, width, kSeenHeight_mm);
  if (!figure.empty()) seen.heading(sheet.desk.say("paper.seen.walls"));
  seen.append(figure);
  Writer consent(sheet.desk, width);
  writeConsent(consent, sheet);
  return planWith(sheet, proposalTexts(), {seen.take(), consent.take()});
}

}  // namespace sumpwright::dossier
