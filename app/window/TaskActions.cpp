// The actions that say what the pointer does on the plan.

#include <QtGlobal>
#include <array>

#include "window/Actions.h"
#include "window/MainWindow.h"

namespace sumpwright::window {

namespace {

using tools::Task;
using tools::TaskGroup;

bool mayWork(const MainWindow& w) { return w.session().hasJob(); }

/// Takes up a task.
template <Task kTask>
constexpr ActionSpec task(Menu menu, const char* id, const char* text, const char* keys,
                          const char* tip) {
  ActionSpec spec{id,
                  menu,
                  text,
                  keys,
                  Reach::window,
                  tip,
                  [](MainWindow& w) { w.takeTask(kTask); },
                  mayWork,
                  [](const MainWindow& w) { return w.tasks().task() == kTask; }};
  spec.task = kTask;
  return spec;
}

/// Takes up what was taken last of a group.
template <TaskGroup kGroup>
constexpr ActionSpec again(Menu menu, const char* id, const char* text, const char* keys,
                           const char* tip) {
  return {id,     menu, text, keys, Reach::window, tip, [](MainWindow& w) { w.takeTaskOf(kGroup); },
          mayWork};
}

constexpr std::array kTasks{
    task<Task::choose>(Menu::survey, "survey.choose",
                       QT_TRANSLATE_NOOP("Actions", "Choose and &drag"), "Alt+1",
                       QT_TRANSLATE_NOOP("Actions",
                                         "The pointer chooses what is drawn and drags it. Escape "
                                         "on the plan comes back to this.")),
    again<TaskGroup::opening>(
        Menu::lay_opening, "task.opening", QT_TRANSLATE_NOOP("Actions", "Opening as la&st time"),
        "Alt+2", QT_TRANSLATE_NOOP("Actions", "Takes up the kind of opening that was laid last.")),
    task<Task::lay_window>(
        Menu::lay_opening, "task.window", QT_TRANSLATE_NOOP("Actions", "&Window"), "",
        QT_TRANSLATE_NOOP("Actions", "A window: glass that opens, or a fixed pane.")),
    task<Task::lay_door>(Menu::lay_opening, "task.door", QT_TRANSLATE_NOOP("Actions", "&Door"), "",
                         QT_TRANSLATE_NOOP("Actions", "A door without glass, or with little.")),
    task<Task::lay_glazed_door>(Menu::lay_opening, "task.glazed_door",
                                QT_TRANSLATE_NOOP("Actions", "&Glazed door"), "",
                                QT_TRANSLATE_NOOP("Actions", "A door of glass, one leaf or two.")),
    task<Task::lay_garage_door>(Menu::lay_opening, "task.garage_door",
                                QT_TRANSLATE_NOOP("Actions", "G&arage door"), "",
                                QT_TRANSLATE_NOOP("Actions", "A garage door.")),
    task<Task::lay_air_vent>(
        Menu::lay_opening, "task.vent", QT_TRANSLATE_NOOP("Actions", "&Vent"), "",
        QT_TRANSLATE_NOOP("Actions", "An air brick, trickle vent, extract grille or the like.")),
    task<Task::lay_flue_terminal>(
        Menu::lay_opening, "task.flue", QT_TRANSLATE_NOOP("Actions", "&Flue terminal"), "",
        QT_TRANSLATE_NOOP("Actions", "The terminal of a flue in the wall.")),
    again<TaskGroup::service>(
        Menu::lay_service, "task.service", QT_TRANSLATE_NOOP("Actions", "Service as last t&ime"),
        "Alt+3", QT_TRANSLATE_NOOP("Actions", "Takes up the kind of service that was laid last.")),
    task<Task::lay_gas>(Menu::lay_service, "task.gas", QT_TRANSLATE_NOOP("Actions", "&Gas"), "",
                        QT_TRANSLATE_NOOP("Actions", "Where the gas main comes in.")),
    task<Task::lay_electricity>(
        Menu::lay_service, "task.electricity", QT_TRANSLATE_NOOP("Actions", "&Electricity"), "",
        QT_TRANSLATE_NOOP("Actions", "Where the electricity main comes in.")),
    task<Task::lay_telecom>(Menu::lay_service, "task.telecom",
                            QT_TRANSLATE_NOOP("Actions", "&Telecom"), "",
                            QT_TRANSLATE_NOOP("Actions", "Where the telecom line comes in.")),
    task<Task::lay_oil>(Menu::lay_service, "task.oil", QT_TRANSLATE_NOOP("Actions", "&Oil"), "",
                        QT_TRANSLATE_NOOP("Actions", "Where the oil line comes in.")),
    task<Task::lay_water>(Menu::lay_service, "task.water", QT_TRANSLATE_NOOP("Actions", "&Water"),
                          "", QT_TRANSLATE_NOOP("Actions", "Where the water main comes in.")),
    task<Task::lay_drain>(Menu::lay_service, "task.drain", QT_TRANSLATE_NOOP("Actions", "&Drain"),
                          "", QT_TRANSLATE_NOOP("Actions", "Where a drain leaves the house.")),
    task<Task::lay_waste>(Menu::lay_service, "task.waste",
                          QT_TRANSLATE_NOOP("Actions", "Wa&ste pipe"), "",
                          QT_TRANSLATE_NOOP("Actions", "Where a waste pipe leaves the wall.")),
    again<TaskGroup::on_wall>(
        Menu::lay_on_wall, "task.on_wall",
        QT_TRANSLATE_NOOP("Actions", "Thing on a wa&ll as last time"), "Alt+4",
        QT_TRANSLATE_NOOP("Actions", "Takes up what was laid on a wall last.")),
    task<Task::lay_radiator>(
        Menu::lay_on_wall, "task.radiator", QT_TRANSLATE_NOOP("Actions", "&Radiator"), "",
        QT_TRANSLATE_NOOP("Actions", "A radiator on the inside of an outside wall.")),
    task<Task::lay_pier>(Menu::lay_on_wall, "task.pier", QT_TRANSLATE_NOOP("Actions", "&Pier"), "",
                         QT_TRANSLATE_NOOP("Actions", "A pier of the wall, or a buttress.")),
    task<Task::lay_chimney_breast>(Menu::lay_on_wall, "task.chimney_breast",
                                   QT_TRANSLATE_NOOP("Actions", "&Chimney breast"), "",
                                   QT_TRANSLATE_NOOP("Actions", "A chimney breast on the wall.")),
    task<Task::lay_beam_bearing>(Menu::lay_on_wall, "task.beam_bearing",
                                 QT_TRANSLATE_NOOP("Actions", "&Beam bearing"), "",
                                 QT_TRANSLATE_NOOP("Actions", "Where a beam rests on the wall.")),
    task<Task::lay_movement_joint>(
        Menu::lay_on_wall, "task.movement_joint", QT_TRANSLATE_NOOP("Actions", "&Movement joint"),
        "", QT_TRANSLATE_NOOP("Actions", "A joint through the wall from top to bottom.")),
    task<Task::lay_weep_hole>(Menu::lay_on_wall, "task.weep_hole",
                              QT_TRANSLATE_NOOP("Actions", "&Weep hole"), "",
                              QT_TRANSLATE_NOOP("Actions", "A weep hole in the outer leaf.")),
    task<Task::lay_stepped_footing>(
        Menu::lay_on_wall, "task.stepped_footing", QT_TRANSLATE_NOOP("Actions", "&Stepped footing"),
        "", QT_TRANSLATE_NOOP("Actions", "Where the footing steps up or down.")),
};

constexpr std::array kGroups{
    TaskGroupSpec{TaskGroup::choose, std::nullopt, paint::Glyph::choose, "survey.choose"},
    TaskGroupSpec{TaskGroup::opening, Menu::lay_opening, paint::Glyph::opening, "task.opening"},
    TaskGroupSpec{TaskGroup::service, Menu::lay_service, paint::Glyph::service, "task.service"},
    TaskGroupSpec{TaskGroup::on_wall, Menu::lay_on_wall, paint::Glyph::on_wall, "task.on_wall"},
};

}  // namespace

std::span<const ActionSpec> taskActions() { return kTasks; }
std::span<const TaskGroupSpec> taskGroups() { return kGroups; }

}  // namespace sumpwright::window
