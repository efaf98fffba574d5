#pragma once
// Which papers, on what sheet, in how many files: ticked and chosen, told at once.

#include <QLabel>
#include <QWidget>
#include <map>

#include "stages/PaperChoice.h"
#include "stages/Segments.h"
#include "stages/TickBox.h"

namespace sumpwright::stages {

class PaperList final : public QWidget {
  Q_OBJECT

 public:
  explicit PaperList(QWidget* parent = nullptr);

  const PaperChoice& choice() const { return m_choice; }
  /// Shows a choice without telling anybody.
  void show(const PaperChoice& choice);
  TickBox* box(dossier::Paper paper) const { return m_boxes.at(paper); }
  Segments* sizes() const { return m_sizes; }
  Segments* lie() const { return m_lie; }
  Segments* files() const { return m_files; }

 Q_SIGNALS:
  void changed();

 private:
  Segments* addChoice(const QString& name, const QStringList& choices);
  void refresh();

  PaperChoice m_choice;
  std::map<dossier::Paper, TickBox*> m_boxes;
  Segments* m_sizes;
  Segments* m_lie;
  Segments* m_files;
};

}  // namespace sumpwright::stages
