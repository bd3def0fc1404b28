// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;

/**
 * The project that the workbench has open, or none; what views listen to. To be used on the user interface's thread only. It watches
 * the project's files, keeps a copy of unsaved edits safe from a crash, and finds the project's problems, all in the background.
 */
public final class ProjectDesk {
    private static final Messages TEXTS = Messages.of(ProjectDesk.class);
    private static final System.Logger LOGGER = System.getLogger(ProjectDesk.class.getName());

    private final BackgroundWork work;
    private final Clock clock;
    private final Alarm alarm;
    private final DeskListeners listeners;
    private final LogDesk log;
    private final ProblemDesk problems;
    private final SaveQueue saves;
    private final DiskDesk disk;
    private final SharingDesk sharing;
    private Consumer<Throwable> faults = failure -> LOGGER.log(System.Logger.Level.ERROR, "A view failed.", failure);
    private Optional<RecentProjects> recent = Optional.empty();
    private Optional<ProjectSession> session = Optional.empty();
    private Optional<RecoveryKeeper> keeper = Optional.empty();
    private boolean disposed;

    /**
     * Makes a desk with no project on it.
     *
     * @param work for what takes long
     * @param clock in the user's time zone
     */
    public ProjectDesk(BackgroundWork work, Clock clock) {
        this(
                work,
                clock,
                new DaemonAlarm("ohmstead-project-watch"),
                ProblemDesk.usualCollector(),
                // A server may be slow to answer; the files must not wait for it.
                new DaemonAlarm("ohmstead-shared-log"),
                SharingDesk::usual);
    }

    ProjectDesk(BackgroundWork work, Clock clock, Alarm alarm, ProblemCollector collector) {
        this(work, clock, alarm, collector, alarm, SharingDesk::usual);
    }

    ProjectDesk(
            BackgroundWork work,
            Clock clock,
            Alarm alarm,
            ProblemCollector collector,
            Alarm sharingAlarm,
            SharingDesk.Maker sharingMaker) {
        this.work = work;
        this.clock = clock;
        this.alarm = alarm;
        this.listeners = new DeskListeners(failure -> faults.accept(failure));
        this.problems = new ProblemDesk(work, alarm, listeners, this::view, collector);
        this.log = new LogDesk(work, listeners, problems::changed, this::amplifier);
        OffThread offThread = new OffThread(work, alarm);
        this.saves = new SaveQueue(offThread, this::session);
        this.disk = new DiskDesk(new DiskDesk.Wiring(work, alarm, offThread, listeners), this::session, saves, log);
        this.sharing = new SharingDesk(work, sharingAlarm, listeners, this::session, sharingMaker);
        SharingProblems sharingProblems = new SharingProblems(problems::changed);
        collector.add(sharingProblems);
        listeners.add(sharingProblems);
        listeners.add(new SharingFollower());
    }

    /** Returns the open project, or empty. */
    public Optional<ProjectSession> session() {
        return session;
    }

    /** Returns what the test log held when it was last read; {@link LogSnapshot#NONE} when there is none. */
    public LogSnapshot log() {
        return log.log();
    }

    /** Returns the problems of the open project as last found; without one, those of the program itself, such as faulty modules. */
    public List<Problem> problems() {
        return problems.problems();
    }

    /** Returns the entry that the user looks at, or empty. */
    public Optional<LogEntry> chosenEntry() {
        return log.chosen();
    }

    /**
     * Finds an entry of the test log, also one that {@link #log} does not hold; that is read in the background.
     *
     * @param entryId its id, such as R0001 or B/R0001
     * @param found hears of it, or that there is none, unless another project is open by then
     * @param failed hears why the log could not be read
     */
    public void findEntry(String entryId, Consumer<Optional<LogEntry>> found, Consumer<Exception> failed) {
        log.find(entryId, found, failed);
    }

    /** Chooses the entry that the user looks at, in all views. */
    public void choose(Optional<LogEntry> entry) {
        log.choose(entry);
    }

    /** Returns what the status line shows of the open project, or empty when none is open. */
    public Optional<DeskStatus> status() {
        return session.map(open -> DeskStatus.of(open, log.log()));
    }

    /** Returns how the laboratory's shared log stands to the log of the open project. */
    public SharingState sharing() {
        return sharing.state();
    }

    /** Hands over to the shared log now, without waiting for the next try; does nothing when the project names none. */
    public void handOver() {
        sharing.retry();
    }

    /** Returns what the user should be told of the open project, oldest first, one of each kind. */
    public List<SessionNotice> notices() {
        return session.map(ProjectSession::notices).orElse(List.of());
    }

    /** Adds a listener; on a failure it is reported and the others hear the event all the same. */
    public Registration listen(DeskListener listener) {
        return listeners.add(listener);
    }

    /** Says who hears of failures of listeners; until then they go to the system's log. */
    public void onFault(Consumer<Throwable> newFaults) {
        faults = newFaults;
    }

    /** Adds a provider of problems, which is asked from now on. */
    public Registration addProblemProvider(ProblemProvider provider) {
        return problems.add(provider);
    }

    /** Says where to remember the projects that are opened. */
    public void useRecentProjects(RecentProjects projects) {
        recent = Optional.of(projects);
    }

    /** Returns how numbers and uncertainties are shown. */
    public DisplaySettings display() {
        return DisplaySettings.inForce();
    }

    /** Has numbers and uncertainties shown otherwise, in the whole process, and tells the listeners. */
    public void setDisplay(DisplaySettings settings) {
        boolean others = !settings.equals(display());
        // Also when they are the same: what is chosen need not be looked up for each number, as the language's sign
        // must be.
        settings.putInForce();
        if (others) {
            listeners.tell(listener -> listener.displayChanged(settings));
        }
    }

    /** Returns what runs long work. */
    public BackgroundWork work() {
        return work;
    }

    /** Reads the test log anew in the background. */
    public void refreshLog() {
        log.refresh();
    }

    /**
     * Takes an entry of the test log back, in the background, then reads the log anew.
     *
     * @param entryId id of a reading or note
     * @param operator who decided it; may be empty
     * @param reason why; not blank
     * @param failed hears why it could not be done
     */
    public void voidEntry(String entryId, String operator, String reason, Consumer<Exception> failed) {
        if (session.map(ProjectSession::readOnly).orElse(false)) {
            failed.accept(new SessionException(TEXTS.text("void.readOnly", entryId)));
            return;
        }
        log.voidEntry(entryId, operator, reason, failed);
    }

    /**
     * Opens a project in the background. What is open stays so until the other is read, and when it cannot be. A project that is open
     * already stays as it is.
     *
     * @param folder the project's folder, or the file in it
     * @param unsaved what becomes of unsaved edits of the project that is open now
     * @param opened hears of the open session
     * @param failed hears why it was not opened; {@link UnsavedEdits} when the user is to be asked about those first
     */
    public void open(Path folder, Unsaved unsaved, Consumer<ProjectSession> opened, Consumer<Exception> failed) {
        Optional<UnsavedEdits> refusal = refusal(unsaved);
        if (refusal.isPresent()) {
            failed.accept(refusal.get());
            return;
        }
        work.start(
                TEXTS.text("open.job", folder.getFileName()),
                progress -> {
                    progress.stopIfCancelled();
                    ProjectSession fresh = ProjectSession.open(folder, clock);
                    // Not by the task's result: that is lost when the user cancels late, and the lock with it.
                    work.later(() -> take(fresh, unsaved, opened, failed));
                    return fresh;
                },
                fresh -> {},
                failed);
    }

    private void take(
            ProjectSession fresh, Unsaved unsaved, Consumer<ProjectSession> opened, Consumer<Exception> failed) {
        Optional<ProjectSession> same = session.filter(open -> SessionOpening.same(open.folder(), fresh.folder()));
        Optional<UnsavedEdits> refusal = refusal(unsaved);
        if (disposed || same.isPresent() || refusal.isPresent()) {
            end(fresh, false);
            same.ifPresentOrElse(opened, () -> refusal.ifPresent(failed));
            return;
        }
        endOpenSession(false);
        session = Optional.of(fresh);
        keeper = Optional.of(new RecoveryKeeper(fresh, work, alarm, clock, this::tell));
        fresh.observe(new Observer());
        listeners.tell(listener -> listener.sessionChanged(Optional.of(fresh)));
        listeners.tell(DeskListener::stateChanged);
        fresh.notices().forEach(notice -> listeners.tell(listener -> listener.noticed(notice)));
        log.turnTo(Optional.of(fresh.logFile()));
        recent.ifPresent(
                projects -> Guard.run(() -> projects.opened(fresh.folder())).ifPresent(faults));
        opened.accept(fresh);
    }

    private Optional<UnsavedEdits> refusal(Unsaved unsaved) {
        return session.filter(open -> unsaved == Unsaved.REFUSE && open.dirty())
                .map(open -> new UnsavedEdits(open.project().title()));
    }

    /**
     * Closes the open project; does nothing when there is none.
     *
     * @param unsaved what becomes of unsaved edits
     * @throws UnsavedEdits when there are some and they are to be kept
     */
    public void close(Unsaved unsaved) throws UnsavedEdits {
        Optional<UnsavedEdits> refusal = refusal(unsaved);
        if (refusal.isPresent()) {
            throw refusal.get();
        }
        close(false);
    }

    private void close(boolean keepRecoveryCopy) {
        if (session.isPresent()) {
            endOpenSession(keepRecoveryCopy);
            listeners.tell(listener -> listener.sessionChanged(Optional.empty()));
            listeners.tell(DeskListener::stateChanged);
            log.turnTo(Optional.empty());
            problems.clear();
        }
    }

    private void endOpenSession(boolean keepRecoveryCopy) {
        keeper.ifPresent(RecoveryKeeper::stop);
        keeper = Optional.empty();
        Optional<ProjectSession> before = session;
        session = Optional.empty();
        before.ifPresent(open -> end(open, keepRecoveryCopy));
    }

    private void end(ProjectSession ended, boolean keepRecoveryCopy) {
        ended.observe(SessionObserver.NONE);
        try {
            ended.close(keepRecoveryCopy);
        } catch (SessionException failure) {
            tell(new SessionNotice(SessionNotice.Kind.LOCK_KEPT, failure.getMessage()));
        }
    }

    /**
     * Saves the open project in the background; saves ordered meanwhile follow one after the other.
     *
     * @param done runs when it is saved
     * @param failed hears why it was not
     */
    public void save(Runnable done, Consumer<Exception> failed) {
        saves.save(done, failed);
    }

    private String amplifier() {
        return session.map(open -> open.project().amplifier().fullName()).orElse("");
    }

    private Optional<ProjectView> view() {
        return session.map(open ->
                new ProjectView(open.folder(), open.project(), open.fileProblems(), log.log(), LocalDate.now(clock)));
    }

    private void tell(SessionNotice notice) {
        session.ifPresent(open -> open.note(notice));
        listeners.tell(listener -> listener.noticed(notice));
    }

    /** Begins to look at the project's files every two seconds. */
    public void startWatching() {
        disk.start();
    }

    /** Looks at the files no more, unless asked to. */
    public void stopWatching() {
        disk.stop();
    }

    /**
     * Looks in the background whether the project's file or its log was changed outside, and whether a project that is open for reading
     * can be edited now. A changed project without unsaved edits is read anew; everything else is told to the listeners.
     */
    public void lookAtFiles() {
        disk.look();
    }

    /**
     * Ends the desk: closes the project, and keeps a copy of unsaved edits for the next time. Whoever wants them dropped closes the
     * project first.
     */
    public void dispose() {
        disposed = true;
        disk.stop();
        close(true);
        problems.dispose();
        sharing.dispose();
        alarm.close();
    }

    /** Hears of the open session. */
    private final class Observer implements SessionObserver {
        @Override
        public void changed(Project before, Project after) {
            listeners.tell(listener -> listener.projectChanged(before, after));
            stateChanged();
        }

        @Override
        public void stateChanged() {
            keeper.ifPresent(RecoveryKeeper::changed);
            problems.changed();
            listeners.tell(DeskListener::stateChanged);
        }
    }

    /** Has the shared log follow the open project and its log. */
    private final class SharingFollower implements DeskListener {
        @Override
        public void stateChanged() {
            sharing.follow();
        }

        @Override
        public void logChanged(LogSnapshot read) {
            sharing.logRead(read);
        }
    }
}
