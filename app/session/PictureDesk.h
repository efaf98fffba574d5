#pragma once
// The picture under the plan: read on a thread of its own, placed, scaled, straightened. Panel and
// plan show it; it writes through the session, one step of undo for each gesture.
//
// The job says which picture and where; what is shown follows the job, whoever changed it. A
// picture that cannot be read is said (problems()) and nothing else suffers.

#include <QObject>
#include <QString>
#include <QThreadPool>
#include <atomic>
#include <memory>
#include <optional>

#include "session/PictureLoad.h"
#include "session/Session.h"
#include "tools/PictureMarks.h"

namespace sumpwright::session {

class PictureDesk final : public QObject {
  Q_OBJECT

 public:
  enum class Tool { move, scale, straighten };
  /// How the line between two points is to lie once it is scaled.
  enum class Lie { as_it_is, level, upright };

  explicit PictureDesk(Session& session, QObject* parent = nullptr);
  ~PictureDesk() override;

  // What there is.

  /// The job's; nothing without one.
  const plan::Underlay* underlay() const;
  bool isReading() const { return m_reading != nullptr; }
  /// Name of the file that is being read.
  QString readingName() const;
  /// Gives up what is being read: a picture chosen is not laid, one of the job is not shown.
  void giveUpReading();
  /// Why the job's picture is not shown, or the last one chosen was not taken.
  const base::Problems& problems() const { return m_problems; }
  /// What was done with the file that the user should know; empty: nothing.
  const QString& note() const { return m_note; }
  /// What the file holds; nullptr until it is read.
  const PictureReady* picture() const { return m_shown ? &*m_shown : nullptr; }

  /// What the plan shows: pixels of halves().front() placed as Underlay.h of files says.
  struct Layer {
    plan::Underlay placed;
    const std::vector<QImage>* halves = nullptr;
    int revision = 0;  ///< another with other pixels
  };
  std::optional<Layer> layer() const;

  // Edits. Without a job, or where they mean nothing, nothing happens.

  /// Lays a picture under the plan, or another one (page) in its place. Of a saved job a copy is
  /// put beside it, unless it is there already; of one that was never saved, when it is saved.
  void choose(const QString& file, int page = 0);
  /// The same picture, found elsewhere: place and scale stay.
  void find(const QString& file);
  /// Looks again for a picture that could not be read.
  void lookAgain();
  void showPage(int page);
  void remove();
  void setLocked(bool locked);
  void setShown(bool shown);
  /// Steps of one `gesture` (Session::newGesture()) are one step of undo; of 0, those that follow
  /// each other closely, as for turnTo() and nudge().
  void setFade(double fade, int gesture);
  /// Turned about its middle, to `degrees` counter-clockwise.
  void turnTo(double degrees);

  // Gestures on the plan, while the picture is at work. A tool is begun, its marks are set, and it
  // is applied or given up; the tool in force otherwise is to move the picture.

  bool isAtWork() const { return m_at_work && underlay() != nullptr; }
  void setAtWork(bool at_work);
  Tool tool() const { return m_tool; }
  void begin(Tool tool);
  void giveUp();

  bool mayMove() const;
  void beginMove(geometry::Point at);
  void moveTo(geometry::Point at);
  void finishMove();
  void cancelMove();
  bool isMoving() const { return m_move_from.has_value(); }
  geometry::Vec moved() const { return m_moved; }
  /// Without the pointer.
  void nudge(geometry::Vec by_m);

  /// Marks of the scale, plan points.
  tools::TwoPoints& points() { return m_points; }
  const tools::TwoPoints& points() const { return m_points; }
  /// Marks of the rectangle, pixels of the photo.
  tools::FourCorners& corners() { return m_corners; }
  const tools::FourCorners& corners() const { return m_corners; }
  /// The marks were changed: everybody looks again.
  void touchMarks();
  /// Whether the corners can be seen: the photo is shown, and not a sample of the straight one.
  bool showsCorners() const;

  /// Scaled so that the two points are so far apart. False: nothing was done, the points are none.
  bool applyScale(double length_m, Lie lie);
  /// The sides the corners are a rectangle of; <= 0: not known yet.
  void setSides(double width_m, double height_m);
  double width_m() const { return m_width_m; }
  double height_m() const { return m_height_m; }
  /// Shows what it will look like.
  void setSampling(bool sampling);
  bool isSampling() const { return m_sampling; }
  bool mayStraighten() const;
  bool applyStraighten();
  /// The photo as it is again; the rectangle is forgotten.
  void applyUnstraighten();

  /// Around saving the job as another file: puts a copy of the picture beside it first, as a step
  /// of undo that is taken back where the job could not be saved. Problems: those of
  /// files::takeBeside; the picture then keeps its full path.
  base::Problems beginSaving(const QString& job_file);
  void endSaving(bool saved);

 Q_SIGNALS:
  void changed();       ///< anything but pixels and marks
  void layerChanged();  ///< what the plan shows
  void marksChanged();

 private:
  struct Reading;
  struct Choice;
  std::string jobFile() const { return m_session.path().toStdString(); }
  PictureWanted wantedNow() const;
  void follow();
  void read(PictureWanted wanted, std::optional<Choice> choice);
  void finishReading(const std::shared_ptr<Reading>& reading);
  void stopReading();
  void showNothing();
  void layDown(const Reading& reading);
  plan::Underlay placedFresh(const PictureReady& ready) const;
  plan::Underlay placedPhoto() const;
  plan::Straighten rectangle() const;
  void beginCorners();
  bool put(const QString& text, const plan::Underlay& underlay, int gesture = 0);
  void dropTool();
  enum class Small { none, fade, turn, nudge };
  int gestureOf(Small kind);
  void tellIfOther();

  Session& m_session;
  QThreadPool m_pool;
  std::shared_ptr<Reading> m_reading;
  std::optional<PictureWanted> m_wanted;  ///< of m_shown, or of what could not be read
  std::optional<PictureReady> m_shown;
  int m_revision = 0;
  std::optional<plan::Underlay> m_told;  ///< what was told of last
  Small m_small = Small::none;
  int m_small_gesture = 0;
  qint64 m_small_at_ms = 0;
  base::Problems m_problems;
  QString m_note;
  struct Saving {
    bool edited = false;
    bool shown = false;
  };
  std::optional<Saving> m_saving;
  bool m_at_work = false;
  Tool m_tool = Tool::move;
  tools::TwoPoints m_points;
  tools::FourCorners m_corners{{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}}};
  bool m_corners_set = false;
  double m_width_m = 0.0;
  double m_height_m = 0.0;
  bool m_sampling = false;
  std::optional<Layer> m_sample;
  std::vector<QImage> m_sample_image;
  std::optional<geometry::Point> m_move_from;
  plan::Underlay m_before_move;
  geometry::Vec m_moved;
};

}  // namespace sumpwright::session
