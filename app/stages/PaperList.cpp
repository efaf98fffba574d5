#include "stages/PaperList.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "paint/Look.h"
#include "words/Words.h"

namespace sumpwright::stages {

namespace {

QString named(const base::Message& message) {
  return QString::fromStdString(words::say(message, words::Units::metric));
}

}  // namespace

PaperList::PaperList(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Papers"));
  const double k = paint::uiScale(font());
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  for (const dossier::Paper paper : dossier::allPapers()) {
    auto* box = new TickBox(named(dossier::titleOf(paper)), this);
    box->setToolTip(named(dossier::aboutOf(paper)));
    box->setAccessibleDescription(box->toolTip());
    column->addWidget(box);
    m_boxes[paper] = box;
    connect(box, &QCheckBox::toggled, this, [this, paper](bool ticked) {
      if (m_choice.has(paper) == ticked) return;
      m_choice.set(paper, ticked);
      refresh();
      Q_EMIT changed();
    });
  }
  column->addSpacing(qRound(10 * k));
  m_sizes = addChoice(tr("Sheet"), {tr("A4"), tr("A3"), tr("Letter")});
  m_lie = addChoice(tr("Held"), {tr("Portrait"), tr("Landscape")});
  m_files = addChoice(tr("Files"), {tr("One PDF"), tr("One each")});
  connect(m_sizes, &Segments::picked, this, [this](int index) {
    m_choice.size = static_cast<dossier::PaperSize>(index);
    Q_EMIT changed();
  });
  connect(m_lie, &Segments::picked, this, [this](int index) {
    m_choice.landscape = index == 1;
    Q_EMIT changed();
  });
  connect(m_files, &Segments::picked, this, [this](int index) {
    m_choice.one_file = index == 0;
    Q_EMIT changed();
  });
  show(m_choice);
}

Segments* PaperList::addChoice(const QString& name, const QStringList& choices) {
  auto* row = new QHBoxLayout;
  row->setContentsMargins(0, qRound(3 * paint::uiScale(font())), 0, 0);
  auto* label = new QLabel(name, this);
  label->setProperty("tone", QStringLiteral("second"));
  auto* segments = new Segments(name, choices, this, Segments::Spacing::close);
  row->addWidget(label);
  row->addStretch();
  row->addWidget(segments);
  static_cast<QVBoxLayout*>(layout())->addLayout(row);
  return segments;
}

void PaperList::show(const PaperChoice& choice) {
  m_choice = choice;
  for (const auto& [paper, box] : m_boxes) box->setChecked(choice.has(paper));
  m_sizes->show(static_cast<int>(choice.size));
  m_lie->show(choice.landscape ? 1 : 0);
  m_files->show(choice.one_file ? 0 : 1);
  refresh();
}

/// What makes no difference cannot be pressed, and says why.
void PaperList::refresh() {
  const bool lies = std::any_of(m_choice.papers.begin(), m_choice.papers.end(), dossier::mayLie);
  m_lie->setEnabled(lies);
  m_lie->setToolTip(lies ? QString()
                         : tr("Only papers with a plan on them can lie: none of them is ticked."));
}

}  // namespace sumpwright::stages
