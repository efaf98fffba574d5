#pragma once
// An outline taken from a drawing or a map: layers and unit asked, rings shown with their areas,
// the outside wall and courtyards chosen, then taken as one step of undo.

#include <QComboBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>
#include <optional>
#include <set>
#include <vector>

#include "session/OutlineImport.h"
#include "session/Session.h"
#include "stages/SideNote.h"

namespace sumpwright::stages {

/// Rings to scale in a small frame: the outside wall heavy, courtyards hatched, the others thin.
class RingPreview final : public QWidget {
  Q_OBJECT

 public:
  explicit RingPreview(QWidget* parent = nullptr);
  void show(const std::vector<geometry::Polygon>& others, const geometry::Polygon& outer,
            const std::vector<geometry::Polygon>& courtyards);
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::vector<geometry::Polygon> m_others;
  geometry::Polygon m_outer;
  std::vector<geometry::Polygon> m_courtyards;
};

class ImportPage final : public QWidget {
  Q_OBJECT

 public:
  explicit ImportPage(session::Session& session, QWidget* parent = nullptr);
  /// What is to be taken, just read.
  void begin(session::OutlineImport import);
  void takeFocus();

  QComboBox* unit() const { return m_unit; }
  QListWidget* layers() const { return m_layers; }
  QComboBox* outer() const { return m_outer; }
  QListWidget* courtyards() const { return m_courtyards; }
  QPushButton* takeButton() const { return m_take; }
  QPushButton* giveUpButton() const { return m_give_up; }
  SideNote* warning() const { return m_warning; }
  QString aboutText() const { return m_about->text(); }
  QString leftOutText() const { return m_left_out->isHidden() ? QString() : m_left_out->text(); }

 Q_SIGNALS:
  void taken();
  void givenUp();

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void makeDrawingChoice(QVBoxLayout* column);
  void makeRingChoice(QVBoxLayout* column);
  void findRings();
  void fillRings();
  void fillCourtyards();
  void refreshPreview();
  void take();
  QString sizeText(const geometry::Polygon& ring) const;
  std::set<std::size_t> chosenCourtyards() const;

  session::Session& m_session;
  std::optional<session::OutlineImport> m_import;
  QLabel* m_file = nullptr;
  QLabel* m_about = nullptr;
  QWidget* m_drawing = nullptr;
  QComboBox* m_unit = nullptr;
  QListWidget* m_layers = nullptr;
  QWidget* m_rings = nullptr;
  RingPreview* m_preview = nullptr;
  QComboBox* m_outer = nullptr;
  QLabel* m_courtyards_label = nullptr;
  QListWidget* m_courtyards = nullptr;
  QLabel* m_left_out = nullptr;
  SideNote* m_warning = nullptr;
  QPushButton* m_take = nullptr;
  QPushButton* m_give_up = nullptr;
  bool m_filling = false;
};

}  // namespace sumpwright::stages
