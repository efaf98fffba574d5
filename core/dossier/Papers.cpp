#include "dossier/Papers.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace sumpwright::dossier {
namespace {

Document proposalOf(const Sheet& sheet) {
  return proposal(sheet.study, sheet.desk.voice, sheet.options);
}

struct PaperKind {
  Paper paper;
  std::string_view name;
  const char* title;
  Document (*make)(const Sheet& sheet);
};

constexpr std::array kKinds{
    PaperKind{Paper::proposal, "proposal", "paper.title", proposalOf},
    PaperKind{Paper::crew, "crew", "paper.crew.title", crewSheet},
    PaperKind{Paper::commissioning, "commissioning", "paper.form.title", commissioningForm}};

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

Document paperOf(Paper paper, const siting::Study& study, const drawing::Voice& voice,
                 const ClientPlanOptions& options) {
  const Sheet sheet(study, voice, options);
  return kindOf(paper).make(sheet);
}

Document bound(std::vector<Document> documents, const std::string& title) {
  Document all;
  if (documents.empty()) return all;
  all = std::move(documents.front());
  all.title = title;
  all.subject = title;
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

}  // namespace sumpwright::dossier
