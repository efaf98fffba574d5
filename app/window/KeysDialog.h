#pragma once
// Everything that can be done, with its keys: the action table as a list. Not modal.

#include <QDialog>

namespace sumpwright::window {

class KeysDialog final : public QDialog {
  Q_OBJECT

 public:
  explicit KeysDialog(QWidget* parent);
};

}  // namespace sumpwright::window
