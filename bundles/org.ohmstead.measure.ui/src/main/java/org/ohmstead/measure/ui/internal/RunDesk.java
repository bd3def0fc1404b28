// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.UnaryOperator;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.measure.engine.CatalogListener;
import org.ohmstead.measure.engine.CatalogView;
import org.ohmstead.measure.engine.DryStep;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PluginKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/**
 * Carries the open project's plan out for the person at the bench: the plan as it stands, what is in the way of the next step, the run
 * that goes on, and how it ended. One for the whole workbench. User interface's thread only, except for {@link #emergencyStop}.
 */
final class RunDesk implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(RunDesk.class);

    private static final long LONGEST_CLOSE_MILLIS = 30_000;

    private final ProjectDesk desk;
    private final Catalog catalog;
    private final Chosen chosen;
    private final OperatorQuestions questions;
    private final EmergencyStop stop;
    private final RunOpening opening;
    private final RunCourse course;
    private final DryRuns dryRuns;
    private final LogDeeds deeds;
    private final List<Runnable> listeners = new ArrayList<>();
    private final CatalogListener plugins = this::pluginsChanged;
    private final Runnable questioned;
    private final Registration listening;
    private CatalogView catalogView;
    private Optional<Thread> closing = Optional.empty();
    private Optional<RunJob> going = Optional.empty();
    private Optional<EmergencyStop.Report> stopped = Optional.empty();
    private Optional<Message> message = Optional.empty();
    private boolean begun;
    /** Whether the desk's log is that of the open project already. */
    private boolean logKnown = true;

    private String lastHead = "";

    /** Makes a desk; nothing is opened before a project is. */
    RunDesk(
            ProjectDesk desk,
            Catalog catalog,
            Plans plans,
            ConsoleMemory memory,
            OperatorQuestions questions,
            Clock clock) {
        this.desk = desk;
        this.catalog = catalog;
        chosen = new Chosen(memory, plans);
        this.questions = questions;
        stop = new EmergencyStop(clock);
        opening = new RunOpening(desk.work(), catalog, plans, stop, this::opened, this::failed);
        course = new RunCourse(new RunProgress(desk.work(), clock, this::tell));
        dryRuns = new DryRuns(desk.work(), this::tell, this::failed);
        deeds = new LogDeeds(
                desk.work(),
                opening::open,
                () -> say(Severity.WARNING, whyNot().orElseGet(() -> TEXTS.text("hurdle.preparing"))),
                this::failed);
        catalogView = catalog.view();
        catalog.addListener(plugins);
        questioned = () -> desk.work().later(this::tell);
        questions.addListener(questioned);
        listening = desk.listen(new Hears());
        turnTo();
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            logKnown = false;
            turnTo();
        }

        @Override
        public void stateChanged() {
            consider();
        }

        @Override
        public void logChanged(LogSnapshot log) {
            RunDesk.this.logChanged(log);
        }
    }

    /** Adds somebody who hears, on the user interface's thread, that anything changed. */
    Registration listen(Runnable listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    private void tell() {
        List.copyOf(listeners).forEach(Runnable::run);
    }

    private void turnTo() {
        drop();
        begun = false;
        stopped = Optional.empty();
        message = Optional.empty();
        lastHead = "";
        course.forget();
        chosen.turnTo(desk.session());
        consider();
    }

    private void drop() {
        Optional<CountDownLatch> run = going.map(RunJob::over);
        going = Optional.empty();
        closing = Optional.of(opening.drop(run));
        course.turnTo(Optional.empty());
        dryRuns.forget();
    }

    /** Opens the plan as it should be now, unless something goes on. */
    private void consider() {
        if (!running() && !halted()) {
            RunStage stage = stage();
            if (stage == RunStage.READY) {
                opening.want(chosen.order(desk.session().orElseThrow()));
            } else if (stage != RunStage.UNSAVED && opening.open().isPresent()) {
                drop();
            }
        }
        refreshRows();
        tell();
    }

    /** Returns how far things are. */
    RunStage stage() {
        RunStage stage = RunStage.of(desk, begun);
        boolean early = stage == RunStage.READY || stage == RunStage.NOT_BEGUN;
        return early && !logKnown ? RunStage.READING : stage;
    }

    private void opened(Optional<OpenRun> now) {
        now.ifPresent(open -> {
            open.run().addListener(new RunFeed(desk.work(), news -> hear(open, news)));
            course.turnTo(Optional.of(open.run().state()));
            dryRuns.forget();
            check();
        });
        refreshRows();
        tell();
    }

    private void failed(Exception failure) {
        String words = failure.getMessage();
        say(Severity.ERROR, words == null ? failure.toString() : words);
    }

    private void logChanged(LogSnapshot log) {
        logKnown = true;
        consider();
        boolean foreign = !log.headHash().equals(lastHead);
        lastHead = log.headHash();
        if (foreign && !running()) {
            opening.open().ifPresent(open -> deeds.refresh());
        }
    }

    private void pluginsChanged(CatalogView view) {
        desk.work().later(() -> {
            catalogView = view;
            // Adding a provider, even one that goes again at once, has all of them asked anew.
            desk.addProblemProvider(project -> List.of()).close();
            check();
            refreshRows();
            tell();
        });
    }

    private void hear(OpenRun of, RunFeed.News news) {
        if (opening.open().filter(open -> open == of).isEmpty()) {
            return;
        }
        course.hear(of, news);
        if (!halted() && news.changed()) {
            stopped = Optional.empty();
        }
        if (news.logged()) {
            message = Optional.empty();
            desk.refreshLog();
        }
        if (news.changed() && !running()) {
            check();
            consider();
        }
        if (news.changed() || news.resting().isPresent() || news.logged()) {
            refreshRows();
        }
        tell();
    }

    private void refreshRows() {
        course.sayRows(project(), chosen.items(desk.session()), catalogView, desk.log());
    }

    private void check() {
        if (!running()) {
            opening.open().ifPresent(open -> dryRuns.ask(open.run()));
        }
    }

    /** Goes through the plan, although there is no log yet: it is made. */
    void begin() {
        begun = true;
        consider();
    }

    /** Changes what is chosen; not while something runs. */
    void choose(UnaryOperator<Choices> change) {
        if (running() || halted()) {
            say(Severity.WARNING, running() ? TEXTS.text("hurdle.wait") : Hurdles.releaseFirst());
            return;
        }
        chosen.change(change, desk.session());
        consider();
    }

    /** Returns what keeps anything from being run now, and what to do; empty when nothing does. */
    Optional<String> whyNot() {
        return Hurdles.of(this);
    }

    /** Returns whether the plan as it should be now is open. */
    boolean prepared() {
        return opening.open().isPresent() && !opening.busy();
    }

    /** Measures the first item that is still to be done. */
    void runNext() {
        course.next()
                .ifPresentOrElse(next -> run(next.item()), () -> say(Severity.NOTE, TEXTS.text("dry.nothingLeft")));
    }

    /** Measures an item, also one that is done. */
    void run(PlanItem item) {
        Optional<String> blocked = dryRuns.of(item).map(DryStep::blocked).filter(sentence -> !sentence.isEmpty());
        if (blocked.isPresent() && whyNot().isEmpty()) {
            say(Severity.WARNING, blocked.get());
            return;
        }
        start(TEXTS.text("job.measuring", item.stepId()), run -> run.run(item));
    }

    /**
     * Measures all that is still to be done.
     *
     * @param goOnAfterFailure whether the others are still tried when an item gives no result
     */
    void runAll(boolean goOnAfterFailure) {
        start(TEXTS.text("job.carryingOut"), run -> run.runAll(goOnAfterFailure));
    }

    private void start(String title, RunJob.Work what) {
        Optional<String> no = whyNot();
        if (no.isPresent()) {
            say(Severity.WARNING, no.get());
            return;
        }
        OpenRun open = opening.open().orElseThrow();
        RunJob job = new RunJob(title, open.run(), chosen.choices().operator());
        going = Optional.of(job);
        course.begin();
        message = Optional.empty();
        job.start(desk.work(), run -> deeds.aloneWith(() -> what.on(run)), () -> jobEnded(job), this::failed);
        tell();
    }

    private void jobEnded(RunJob job) {
        if (going.filter(each -> each == job).isPresent()) {
            going = Optional.empty();
            course.end();
            desk.refreshLog();
            check();
            consider();
        }
    }

    /** Returns what the log keeps of the person's decisions. */
    LogDeeds deeds() {
        return deeds;
    }

    /** Uses a plug-in again that was set aside. */
    void bringBack(PluginKind kind, String id) {
        catalog.bringBack(kind, id);
    }

    /** Makes the bench safe at once. Any thread; it waits for nothing. */
    void emergencyStop() {
        boolean pressed =
                stop.press(chosen.choices().operator(), report -> desk.work().later(() -> {
                    stopped = Optional.of(report);
                    tell();
                }));
        if (!pressed) {
            desk.work().later(() -> say(Severity.WARNING, TEXTS.text("stop.noBench")));
        }
    }

    private void say(Severity severity, String sentence) {
        message = Optional.of(new Message(severity, sentence));
        tell();
    }

    /** Returns the project whose plan is shown. */
    Optional<Project> project() {
        return opening.open().map(open -> open.order().project()).or(() -> desk.session()
                .map(ProjectSession::project));
    }

    CatalogView catalog() {
        return catalogView;
    }

    Choices choices() {
        return chosen.choices();
    }

    /** Returns what is chosen, with what was chosen before. */
    Chosen chosen() {
        return chosen;
    }

    OperatorQuestions questions() {
        return questions;
    }

    /** Returns how the plan stands and what goes on in it. */
    RunCourse course() {
        return course;
    }

    /** Returns what going through the plan has found. */
    DryRuns dryRuns() {
        return dryRuns;
    }

    Optional<EmergencyStop.Report> stopped() {
        return stopped;
    }

    Optional<Message> message() {
        return message;
    }

    /** Returns whether something is being carried out. */
    boolean running() {
        return going.isPresent();
    }

    /** Returns whether the emergency stop is pressed. */
    boolean halted() {
        return course.halted();
    }

    /** Ends what runs in an orderly way and lets the bench go; waits for that, though not for ever. */
    @Override
    public void close() {
        listening.close();
        catalog.removeListener(plugins);
        questions.removeListener(questioned);
        drop();
        course.progress().close();
        try {
            closing.orElseThrow().join(LONGEST_CLOSE_MILLIS);
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
        }
        stop.close();
    }
}
