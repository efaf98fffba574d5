#include "stages/TypedText.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTextDocument>

namespace sumpwright::stages {

bool isWindowsUndo(QWidget* field, QEvent* event) {
  if (event->type() != QEvent::ShortcutOverride) return false;
  const auto* key = static_cast<QKeyEvent*>(event);
  const bool undo = key->matches(QKeySequence::Undo);
  if (!undo && !key->matches(QKeySequence::Redo)) return false;
  bool own = false;
  if (const auto* line = qobject_cast<QLineEdit*>(field)) {
    own = undo ? line->isUndoAvailable() : line->isRedoAvailable();
  } else if (const auto* note = qobject_cast<QPlainTextEdit*>(field)) {
    own = undo ? note->document()->isUndoAvailable() : note->document()->isRedoAvailable();
  }
  if (own) return false;
  event->ignore();  // a field that took it would do nothing with it
  return true;
}

void forgetTyping(QWidget* field) {
  if (auto* line = qobject_cast<QLineEdit*>(field)) {
    const int at = line->cursorPosition();
    line->setText(line->text());  // Qt forgets the steps with it
    line->setCursorPosition(at);
  } else if (auto* note = qobject_cast<QPlainTextEdit*>(field)) {
    note->document()->clearUndoRedoStacks();
  }
}

}  // namespace sumpwright::stages
