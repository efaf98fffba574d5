#pragma once
// The picture under the plan: chosen, faded, locked, turned; scaled by two points and a length;
// straightened by the corners of a rectangle. The marks are set on the plan (canvas/PictureHand.h).

#include <QCheckBox>
#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QSlider>
#include <QSpinBox>
#include <QStackedWidget>

#include "session/PictureDesk.h"
#include "stages/Segments.h"
#include "stages/SideNote.h"

namespace sumpwright::stages {

class PicturePage final : public QWidget {
  Q_OBJECT

 public:
  PicturePage(session::Session& session, session::PictureDesk& desk, QWidget* parent = nullptr);
  void takeFocus();
  /// The line for figures that the tool in hand asks for; nullptr for none.
  QLineEdit* field() const;

  QPushButton* chooseButton() const { return m_choose; }
  /// Where keys go that ask for no figure.
  QPushButton* firstButton() const;
  QPushButton* importButton() const { return m_import; }
  QPushButton* scaleButton() const { return m_scale; }
  QPushButton* straightenButton() const { return m_straighten; }
  QPushButton* removeButton() const { return m_remove; }
  QPushButton* traceButton() const { return m_trace; }
  QPushButton* applyButton() const;
  QPushButton* giveUpButton() const;
  QPushButton* asPhotoButton() const { return m_as_photo; }
  QPushButton* stopButton() const { return m_stop; }
  QCheckBox* shown() const { return m_shown; }
  QCheckBox* locked() const { return m_locked; }
  QSlider* fade() const { return m_fade; }
  QDoubleSpinBox* turn() const { return m_turn; }
  QSpinBox* pageNumber() const { return m_page; }
  QLineEdit* length() const { return m_length; }
  Segments* lie() const { return m_lie; }
  QLineEdit* wide() const { return m_width; }
  QLineEdit* high() const { return m_height; }
  QCheckBox* sample() const { return m_sample; }
  SideNote* warning() const { return m_warning; }
  QString noteText() const { return m_note->isHidden() ? QString() : m_note->text(); }
  QString message() const { return m_message->isHidden() ? QString() : m_message->text(); }
  bool isReading() const { return !m_reading->isHidden(); }

 Q_SIGNALS:
  void chooseAsked();
  void findAsked();
  void importAsked();
  /// What comes next: walls over the picture.
  void traceAsked();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  using Tool = session::PictureDesk::Tool;
  QWidget* makeReading();
  QWidget* makeEmpty();
  QWidget* makeSettings();
  QWidget* makeScale();
  QWidget* makeStraighten();
  QHBoxLayout* makeEnds(QPushButton*& apply, QPushButton*& give_up, QWidget* parent);
  QLineEdit* makeLength(const QString& name, QWidget* parent);
  void refresh();
  void refreshSettings();
  void refreshTool();
  void refreshNotes();
  void say(const QString& text);
  void apply();
  void applyScale();
  void applyStraighten();
  void readSides();
  /// Metres; nothing where none or two readings were typed, and says so when `aloud`.
  std::optional<double> read(QLineEdit* field, bool aloud);

  session::Session& m_session;
  session::PictureDesk& m_desk;
  QLabel* m_title;
  QLabel* m_file;
  QWidget* m_reading = nullptr;
  QLabel* m_reading_text = nullptr;
  QPushButton* m_stop = nullptr;
  SideNote* m_warning;
  SideNote* m_note;
  QStackedWidget* m_body;
  QPushButton* m_choose = nullptr;
  QPushButton* m_import = nullptr;
  QWidget* m_pages = nullptr;
  QSpinBox* m_page = nullptr;
  QLabel* m_of_pages = nullptr;
  QCheckBox* m_shown = nullptr;
  QCheckBox* m_locked = nullptr;
  QSlider* m_fade = nullptr;
  QDoubleSpinBox* m_turn = nullptr;
  QPushButton* m_scale = nullptr;
  QPushButton* m_straighten = nullptr;
  QPushButton* m_trace = nullptr;
  QPushButton* m_another = nullptr;
  QPushButton* m_remove = nullptr;
  QLabel* m_length_label = nullptr;
  QLineEdit* m_length = nullptr;
  Segments* m_lie = nullptr;
  QPushButton* m_apply[2] = {};  ///< of the scale, of straightening
  QPushButton* m_give_up[2] = {};
  QLabel* m_width_label = nullptr;
  QLineEdit* m_width = nullptr;
  QLabel* m_height_label = nullptr;
  QLineEdit* m_height = nullptr;
  QCheckBox* m_sample = nullptr;
  QPushButton* m_as_photo = nullptr;
  QLabel* m_message;
  Tool m_tool = Tool::move;  ///< as shown
  int m_fade_gesture = 0;
};

}  // namespace sumpwright::stages
