#include "stages/NoteOnTop.h"

#include <QVBoxLayout>

#include "paint/Look.h"

namespace sumpwright::stages {

QLabel* noteOnTop(QWidget* list) {
  auto* note = new QLabel(list);
  auto* column = new QVBoxLayout(list);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(qRound(4 * paint::uiScale(list->font())));
  note->setWordWrap(true);
  note->setProperty("tone", QStringLiteral("second"));
  note->setFont(paint::sized(list->font(), 0.92));
  column->addWidget(note);
  return note;
}

}  // namespace sumpwright::stages
