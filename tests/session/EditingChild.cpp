// A session that edits a job without end, to be killed: editing_child JOB SEED. Every finished
// gesture has a number, which the job carries in its notes; once the gesture is finished the number
// is written to standard output. Now and then it saves, undoes and redoes, or drags with a preview.

#include <QCoreApplication>
#include <cstdio>
#include <cstdlib>
#include <random>

#include "plan/OutlineEdits.h"
#include "session/Session.h"

namespace {

using sumpwright::plan::Job;
using sumpwright::session::Session;

class Editor {
 public:
  Editor(Session& session, unsigned seed) : m_session(session), m_random(seed) {}

  void gesture(long number) {
    switch (upTo(9)) {
      case 0:
        return drag(number);
      case 1:
        m_session.undoStack().undo();  // gestures of their own, of which redo gives what there was
        m_session.undoStack().redo();
        return edit(number);
      case 2:
        edit(number);
        if (!m_session.save().empty()) std::exit(3);
        return;
      case 3:
        return arrows(number);
      default:
        return edit(number);
    }
  }

 private:
  int upTo(int most) { return std::uniform_int_distribution<int>(0, most)(m_random); }

  Job numbered(Job job, long number) {
    job.notes = "gesture " + std::to_string(number);
    return job;
  }

  /// A wall some millimetres in or out, or the job as it is where that cannot be.
  Job shifted(const Job& job) {
    const auto edges = static_cast<int>(job.plan.rings[0].walls.size());
    const auto moved = sumpwright::plan::moveWall(job, 0, upTo(edges - 1), 0.001 * (upTo(20) - 10));
    return moved ? *moved : job;
  }

  void edit(long number) {
    m_session.edit(QStringLiteral("Shift a wall"), numbered(shifted(m_session.job()), number));
  }

  void drag(long number) {
    m_session.beginPreview();
    for (int i = 0; i < 3; ++i) m_session.preview(shifted(m_session.jobBeforePreview()));
    m_session.preview(numbered(m_session.job(), number));
    m_session.finishPreview(QStringLiteral("Drag a wall"));
  }

  /// Steps that come faster than the disk may write them, and are one gesture.
  void arrows(long number) {
    const int gesture = m_session.newGesture();
    for (int i = 0; i < 5; ++i) {
      m_session.edit(QStringLiteral("Nudge"), numbered(shifted(m_session.job()), number), gesture);
    }
  }

  Session& m_session;
  std::mt19937 m_random;
};

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication app(argc, argv);
  if (argc != 3) return 2;
  Session session;
  if (!session.open(QString::fromLocal8Bit(argv[1])).empty()) return 1;
  Editor editor(session, static_cast<unsigned>(std::atol(argv[2])));
  for (long number = 1;; ++number) {
    editor.gesture(number);
    std::printf("%ld\n", number);
    std::fflush(stdout);
    QCoreApplication::processEvents();
  }
}
