#include "dossier/Papers.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace sumpwright::dossier {
namespace {

Document planOf(const Sheet& sheet) {
  return clientPlan(sheet.study, sheet.desk.voice, sheet.options);
}

Document proposalOf(const Sheet& sheet) {
  return proposal(sheet.study, sheet.desk.voice, sheet.options);
}

struct PaperKind {
  Paper paper;
  std::string_view name;
  const char* title;
  const char* about;
  Document (*make)(const Sheet& sheet);
  bool lies = false;
  bool suction = false;
  bool priced = false;
};

constexpr std::array kKinds{
    PaperKind{Paper::plan, "plan", "paper.kind.plan", "paper.about.plan", planOf, true, true},
    PaperKind{Paper::proposal, "proposal", "paper.kind.proposal", "paper.about.proposal",
              proposalOf, true, true},
    PaperKind{Paper::quote, "quote", "paper.quote.title", "paper.about.quote", quotePaper, false,
              false, true},
    PaperKind{Paper::crew, "crew", "paper.crew.title", "paper.about.crew", crewSheet, true, true},
    PaperKind{Paper::shopping, "shopping", "paper.shopping.title", "paper.about.shopping",
              shoppingPaper, false, true, true},
    PaperKind{Paper::commissioning, "commissioning", "paper.form.title",
              "paper.about.commissioning", commissioningForm}};

const PaperKind& kindOf(Paper paper) {
  return *std::find_if(kKinds.begin(), kKinds.end(),
                       [&](const PaperKind& kind) { return kind.paper == paper; });
}

}  // namespace

const std::vector<Paper>& allPapers() {
  static const std::vector<Paper> all = [] {
    std::vector<Paper> papers;
    for (const PaperKind& kind : kKinds) papers.push_back(kind.paper);
    return papers;
  }();
  return all;
}

std::string_view nameOf(Paper paper) { return kindOf(paper).name; }

std::optional<Paper> paperNamed(std::string_view name) {
  for (const PaperKind& kind : kKinds) {
    if (kind.name == name) return kind.paper;
  }
  return std::nullopt;
}

base::Message titleOf(Paper paper) { return base::Message(kindOf(paper).title); }

base::Message aboutOf(Paper paper) { return base::Message(kindOf(paper).about); }

bool mayLie(Paper paper) { return kindOf(paper).lies; }

bool tellsSuction(Paper paper) { return kindOf(paper).suction; }

bool isPriced(Paper paper) { return kindOf(paper).priced; }

Document paperOf(Paper paper, const siting::Study& study, const drawing::Voice& voice,
                 const ClientPlanOptions& options) {
  ClientPlanOptions own = options;
  own.landscape = options.landscape && mayLie(paper);
  // What is read like a letter or filled in by hand is no larger than one: A3 is for drawings.
  if (!mayLie(paper) && own.size == PaperSize::a3) own.size = PaperSize::a4;
  // A quote is of its own day: what it holds to is counted from there.
  if (paper == Paper::quote && options.pricing && !options.pricing->quote.date.empty())
    own.date = options.pricing->quote.date;
  const Sheet sheet(study, voice, own);
  return kindOf(paper).make(sheet);
}

Document bound(std::vector<Document> documents, const std::string& title) {
  Document all;
  if (documents.empty()) return all;
  all = std::move(documents.front());
  if (documents.size() > 1) all.subject = title;
  all.title = title;
  for (std::size_t k = 1; k < documents.size(); ++k) {
    Document& one = documents[k];
    const std::size_t before = all.pages.size();
    std::move(one.pages.begin(), one.pages.end(), std::back_inserter(all.pages));
    for (Picture& picture : one.pictures) {
      picture.page += before;
      all.pictures.push_back(std::move(picture));
    }
  }
  return all;
}

Document composed(const std::vector<Paper>& papers, const siting::Study& study,
                  const drawing::Voice& voice, const ClientPlanOptions& options) {
  std::vector<Document> documents;
  for (const Paper paper : allPapers()) {
    if (std::find(papers.begin(), papers.end(), paper) == papers.end()) continue;
    documents.push_back(paperOf(paper, study, voice, options));
  }
  const std::string title =
      documents.size() == 1 ? documents.front().title : voice.say(base::Message("paper.all"));
  return bound(std::move(documents), title);
}

}  // namespace sumpwright::dossier
