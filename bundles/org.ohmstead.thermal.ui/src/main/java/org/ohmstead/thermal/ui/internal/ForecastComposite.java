// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.thermal.plan.ReadingPowers;
import org.ohmstead.thermal.plan.Schedule;
import org.ohmstead.thermal.plan.ScheduledJob;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** What the plan will heat, draw and take: temperatures over time, the schedule to work on, and every step in figures. */
public final class ForecastComposite extends Composite {
    private static final Messages TEXTS = Messages.of(ForecastComposite.class);

    private final ProjectDesk desk;
    private final PartSharing sharing;
    private final ForecastWork work;
    private final ForecastBar bar;
    private final ForecastSummary summary;
    private final ForecastPanes panes;
    private final Slices turns;
    private ForecastNotes notes;
    /** What is shown when nothing is dragged; of the plan, or of the order that was found. */
    private Optional<Forecast> settled = Optional.empty();

    private Optional<Forecast> plans = Optional.empty();
    private Optional<Trial> trial = Optional.empty();
    private Optional<Preview> preview = Optional.empty();
    private String refusal = "";

    /** An order that was found. */
    private record Trial(Schedule schedule, Forecast forecast) {}

    /** What a drag would make. */
    private record Preview(ScheduleChange change, Forecast forecast) {}

    /**
     * Makes the view; some of its parts come in the next turns of the event loop.
     *
     * @param sharing tells how the power of a load falls on its parts
     */
    public ForecastComposite(Composite parent, ProjectDesk desk, PartSharing sharing) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.sharing = sharing;
        work = new ForecastWork(desk.work(), this::fail);
        Spacing.page(1)
                .margins(Spacing.GAP, Spacing.GAP)
                .spacing(0, Spacing.TIGHT)
                .applyTo(this);
        Composite top = new Composite(this, SWT.NONE);
        Spacing.group(2).spacing(Spacing.MARGIN, 0).applyTo(top);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(top);
        summary = new ForecastSummary(top, this::reveal);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(summary);
        bar = new ForecastBar(top, desk.work(), summary, new Pressed());
        bar.moveAbove(summary);
        turns = new Slices(this);
        panes = new ForecastPanes(this, new Worked(), turns, this::choose);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(panes);
        turns.add(() -> {
            notes = new ForecastNotes(this);
            GridDataFactory.fillDefaults().grab(true, false).applyTo(notes);
            notes.requestLayout();
        });
        turns.add(this::start);
    }

    /** Fills the parts when all of them are there. */
    private void start() {
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> {
            listening.close();
            work.forget();
        });
        style();
        forecast();
    }

    private void style() {
        panes.style(
                new ReadOutStyle(desk.display().decimalComma(), desk.display().coverageWords()));
    }

    private Optional<Project> project() {
        return desk.session().map(ProjectSession::project);
    }

    /** Forecasts the plan anew; what is known of another one is forgotten. */
    private void forecast() {
        work.forget();
        bar.forget();
        panes.letGo();
        trial = Optional.empty();
        preview = Optional.empty();
        bar.offer(false);
        if (project().isEmpty()) {
            plans = Optional.empty();
            showNothing(TEXTS.text("forecast.noProject"));
            return;
        }
        Project now = project().get();
        LogSnapshot log = desk.log();
        work.ask(cancelled -> Forecast.of(now, sharing, ForecastReadings.of(log, now), cancelled), made -> {
            plans = Optional.of(made);
            settle(made);
        });
    }

    /** Returns whether what is in view is the forecast of the project as it is, all of it shown. */
    boolean upToDate() {
        return work.done() && turns.done();
    }

    private void fail(Exception failure) {
        showNothing(TEXTS.text("forecast.failed", failure.getMessage()));
    }

    private void showNothing(String sentence) {
        settled = Optional.empty();
        turns.clear();
        bar.setSearchable(false);
        summary.clear();
        notes.clear();
        panes.showMessage(sentence);
    }

    private void settle(Forecast forecast) {
        settled = Optional.of(forecast);
        preview = Optional.empty();
        Optional<String> why = ForecastWords.whyNothing(forecast);
        if (why.isPresent()) {
            showNothing(why.get());
            return;
        }
        bar.setSearchable(forecast.impossible().isEmpty() && forecast.jobIds().size() > 1);
        summary.show(forecast);
        if (!refusal.isEmpty()) {
            summary.say(Severity.WARNING, refusal);
            refusal = "";
        }
        panes.show(forecast, false);
        turns.clear();
        turns.add(() -> notes.show(forecast));
    }

    private void choose(String stepId) {
        summary.again();
        panes.select(Optional.of(stepId));
    }

    private void reveal(String stepId) {
        summary.again();
        panes.reveal(stepId);
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            panes.forget();
            forecast();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            boolean matters = !before.plan().equals(after.plan())
                    || !before.heat().equals(after.heat())
                    || !before.loads().equals(after.loads())
                    || !before.bench().equals(after.bench())
                    || !before.amplifier().equals(after.amplifier())
                    || !before.setAside().equals(after.setAside());
            if (matters) {
                forecast();
            }
        }

        @Override
        public void logChanged(LogSnapshot log) {
            if (log.state() != LogSnapshot.LogState.READING) {
                forecast();
            }
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            style();
            settled.ifPresent(ForecastComposite.this::settle);
            trial.ifPresent(ForecastComposite.this::tell);
        }
    }

    private final class Pressed implements ForecastBar.Actions {
        @Override
        public void find() {
            Optional<Project> now = project();
            if (now.isEmpty()) {
                return;
            }
            Project plan = now.get();
            ReadingPowers readings = ForecastReadings.of(desk.log(), plan);
            bar.run(
                    (ended, progress) -> Forecast.search(plan, sharing, readings, ended, progress),
                    ForecastComposite.this::take);
        }

        @Override
        public void use() {
            if (trial.isPresent()) {
                List<String> order = trial.get().forecast().jobIds();
                edit(TEXTS.text("forecast.edit.order"), project -> ScheduleChange.ordered(project, order));
            }
        }

        @Override
        public void back() {
            trial = Optional.empty();
            bar.offer(false);
            summary.mention("");
            panes.showWhole();
            plans.ifPresent(ForecastComposite.this::settle);
        }
    }

    private void take(Forecast.Found found) {
        if (found.schedule().isEmpty()) {
            settle(found.forecast());
            return;
        }
        Trial now = new Trial(found.schedule().get(), found.forecast());
        if (plans.map(each -> each.jobIds().equals(now.forecast().jobIds())).orElse(false)) {
            summary.mention(TEXTS.text("forecast.noBetter"));
            return;
        }
        trial = Optional.of(now);
        bar.offer(true);
        panes.showWhole();
        tell(now);
        settle(now.forecast());
    }

    private void tell(Trial found) {
        Optional<Schedule> before = plans.flatMap(Forecast::schedule);
        summary.mention(ForecastWords.found(
                found.schedule(),
                before.isPresent() ? OptionalDouble.of(before.get().totalSeconds()) : OptionalDouble.empty()));
    }

    /** Changes the project; what is in view follows when it is told. */
    private void edit(String name, UnaryOperator<Project> change) {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty()) {
            return;
        }
        if (session.get().readOnly()) {
            settled.ifPresent(this::settle);
            summary.say(Severity.WARNING, TEXTS.text("forecast.readOnly"));
            return;
        }
        Project before = session.get().project();
        session.get().edit(name, change);
        if (session.get().project().equals(before)) {
            settled.ifPresent(this::settle);
        }
    }

    /** Returns the project in view, in the order that was found if there is one. */
    private Project inView(Project project) {
        return trial.map(each -> ScheduleChange.ordered(project, each.forecast().jobIds()))
                .orElse(project);
    }

    private final class Worked implements ScheduleStrip.Hands {
        @Override
        public void choose(String stepId) {
            ForecastComposite.this.choose(stepId);
        }

        @Override
        public void preview(ScheduleChange change) {
            Project now = change.apply(inView(project().orElseThrow()));
            ReadingPowers readings = settled.orElseThrow().readings();
            panes.freeze();
            work.ask(cancelled -> Forecast.of(now, sharing, readings, cancelled), made -> {
                if (panes.dragging()) {
                    preview(change, made);
                }
            });
        }

        private void preview(ScheduleChange change, Forecast made) {
            preview = Optional.of(new Preview(change, made));
            panes.say(words(change, made));
            panes.show(made, true);
        }

        private String words(ScheduleChange change, Forecast made) {
            if (made.impossible().isPresent()) {
                return ForecastWords.obstacle(
                        made.impossible().get().obstacles().get(0));
            }
            Schedule schedule = made.schedule().orElseThrow();
            double before = settled.flatMap(Forecast::schedule)
                    .map(Schedule::totalSeconds)
                    .orElse(schedule.totalSeconds());
            ScheduledJob job = made.job(change.stepId()).orElseThrow();
            String all = HeatWords.time(schedule.totalSeconds());
            String longer = ForecastWords.difference(schedule.totalSeconds() - before);
            if (change instanceof ScheduleChange.Moving) {
                String number = Integer.toString(made.jobIds().indexOf(change.stepId()) + 1);
                return TEXTS.text("forecast.moved", change.stepId(), number, all, longer);
            }
            String rest = HeatWords.time(job.restSeconds());
            return job.cause() == ScheduledJob.Cause.LIMIT
                    ? TEXTS.text("forecast.restLeast", rest, change.stepId(), all, longer, made.restCause(job))
                    : TEXTS.text("forecast.rest", rest, change.stepId(), all, longer);
        }

        @Override
        public void make(ScheduleChange change) {
            ScheduleChange wanted = change;
            Optional<ScheduledJob> seen = preview.filter(each -> each.change().equals(change))
                    .flatMap(each -> each.forecast().job(change.stepId()));
            if (change instanceof ScheduleChange.Resting
                    && seen.isPresent()
                    && seen.get().cause() == ScheduledJob.Cause.LIMIT) {
                // A wish below what the limit needs would only lie in wait.
                wanted = new ScheduleChange.Resting(change.stepId(), 0);
                refusal = TEXTS.text(
                        "forecast.restNeeded",
                        change.stepId(),
                        preview.orElseThrow().forecast().restCause(seen.get()));
            }
            ScheduleChange made = wanted;
            edit(made.name(), project -> made.apply(inView(project)));
        }

        @Override
        public void giveUp() {
            settled.ifPresent(ForecastComposite.this::settle);
        }

        @Override
        public void refuse(String sentence) {
            summary.say(Severity.WARNING, sentence);
        }

        @Override
        public void zoom(double seconds, double factor) {
            panes.zoom(seconds, factor);
        }

        @Override
        public void reveal(String stepId) {
            ForecastComposite.this.reveal(stepId);
        }
    }

    @Override
    public boolean setFocus() {
        // A composite that is being disposed is asked to give the focus to one of its own.
        return !isDisposed() && !panes.isDisposed() && panes.setFocus();
    }
}
