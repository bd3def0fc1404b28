// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.RecoveryCopy;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.text.Messages;

/**
 * One open project: immutable records, edits with names, undo, redo. Confined to one thread, in the workbench the user interface's;
 * only {@link #open} may be called on any.
 */
public final class ProjectSession {
    private static final Messages TEXTS = Messages.of(ProjectSession.class);

    /** How many edits can be undone; older ones are forgotten. */
    public static final int MOST_UNDO_STEPS = 500;

    /** How long after an edit another of the same merge key becomes one step with it. */
    public static final Duration MERGE_WITHIN = Duration.ofSeconds(2);

    private final Path folder;
    private final Path file;
    private final Clock clock;
    private final EditHistory<Project> history;
    private final DiskGate gate = new DiskGate();
    private final List<SessionNotice> notices = new ArrayList<>();
    private final List<Recovery> offers = new ArrayList<>();
    private SavedState saved;
    private long lastSave;
    private Optional<WriteAccess.Granted> access = Optional.empty();
    private SessionObserver observer = SessionObserver.NONE;

    ProjectSession(Path file, Clock clock, SavedState saved, Project project) {
        this.file = file;
        this.folder = file.getParent();
        this.clock = clock;
        this.history = new EditHistory<>(project, MOST_UNDO_STEPS, MERGE_WITHIN);
        this.saved = saved;
    }

    /**
     * Opens a project: for writing, or for reading when somebody else has it or its folder may not be written to; {@link #notices} then
     * says why. On any thread.
     *
     * @param projectFolderOrJson the project's folder, or the file in it
     * @param clock for merging edits and the times of recovery copies, in the user's time zone
     * @throws SessionException when it cannot be read
     */
    public static ProjectSession open(Path projectFolderOrJson, Clock clock) throws SessionException {
        return SessionOpening.open(projectFolderOrJson, clock);
    }

    void grant(WriteAccess.Granted granted, WriteAccess.Found found) {
        access = Optional.of(granted);
        found.notices().forEach(this::note);
        for (RecoveryShelf.Left left : found.left()) {
            offers.add(new Recovery(this, left, !left.copy().baseRevision().equals(saved.revision()), clock));
        }
        recovery().ifPresent(first -> note(new SessionNotice(SessionNotice.Kind.RECOVERY_FOUND, first.sentence())));
    }

    /** Returns the project's folder, absolute. */
    public Path folder() {
        return folder;
    }

    /** Returns the project as it is now. */
    public Project project() {
        return history.current();
    }

    /** Returns whether edits are off, because somebody else has the project or its folder may not be written to. */
    public boolean readOnly() {
        return access.isEmpty();
    }

    /** Returns whether the project differs from what stands in its file, as far as is known. */
    public boolean dirty() {
        return !saved.holds(project());
    }

    /** Returns what the user should be told since the project was opened, oldest first. */
    public List<SessionNotice> notices() {
        return List.copyOf(notices);
    }

    /** Returns what was noticed when the file was read or written last, such as unknown fields. */
    public List<Problem> fileProblems() {
        return saved.problems();
    }

    /** Returns unsaved edits that a crash left behind, the newest that is neither recovered nor discarded. */
    public Optional<Recovery> recovery() {
        return offers.stream().findFirst();
    }

    /**
     * Changes the project. Does nothing when the result equals what is there.
     *
     * @param name what the user did, such as "Set load"
     * @param change from the project to the one that takes its place
     * @throws IllegalStateException when the project is open for reading only
     */
    public void edit(String name, UnaryOperator<Project> change) {
        edit(name, Optional.empty(), change);
    }

    /**
     * Changes the project; with the edit before it, this becomes one step of undo when that had the same key, at most {@link
     * #MERGE_WITHIN} ago, and nothing was undone, redone or saved meanwhile.
     *
     * @param name what the user did, such as "Set load"
     * @param mergeKey names what is edited, such as the JSON path of a field
     * @param change from the project to the one that takes its place
     * @throws IllegalStateException when the project is open for reading only
     */
    public void edit(String name, String mergeKey, UnaryOperator<Project> change) {
        edit(name, Optional.of(mergeKey), change);
    }

    private void edit(String name, Optional<String> mergeKey, UnaryOperator<Project> change) {
        if (readOnly()) {
            throw new IllegalStateException("the project is open for reading only, so \"" + name + "\" was not done");
        }
        Project before = project();
        Project after = Objects.requireNonNull(change.apply(before), "the change gave no project");
        if (!after.equals(before)) {
            history.edit(name, after, mergeKey, clock.instant());
            observer.changed(before, after);
        }
    }

    /** Returns the name of the edit that {@link #undo} would take back. */
    public Optional<String> undoName() {
        return history.undoName();
    }

    /** Returns the name of the edit that {@link #redo} would do again. */
    public Optional<String> redoName() {
        return history.redoName();
    }

    /** Takes the last edit back; does nothing when there is none. */
    public void undo() {
        Project before = project();
        if (history.undo()) {
            observer.changed(before, project());
        }
    }

    /** Does the edit again that was taken back last; does nothing when there is none. */
    public void redo() {
        Project before = project();
        if (history.redo()) {
            observer.changed(before, project());
        }
    }

    /** Goes back to what stands in the file, as an edit that can be undone; does nothing when that is not known. */
    public void revertToSaved() {
        saved.project().ifPresent(project -> edit(TEXTS.text("edit.revert"), before -> project));
    }

    /**
     * Writes the project into its file in one step.
     *
     * @throws SessionException when the file was changed outside and nobody chose between both yet, or it could not be written; then
     *     the file and the edits are as they were
     */
    public void save() throws SessionException {
        endSave(beginSave().carryOut());
    }

    SaveOrder beginSave() throws SessionException {
        if (readOnly()) {
            throw new SessionException(TEXTS.text("save.readOnly"));
        }
        history.stopMerging();
        return saved.order(file, project(), gate);
    }

    void endSave(SaveOrder.Done done) {
        if (done.number() < lastSave) {
            return;
        }
        lastSave = done.number();
        saved = SavedState.of(done.loaded(), done.stamp()).withProject(done.project());
        markSaved();
        if (!dirty()) {
            access.flatMap(WriteAccess.Granted::saved).ifPresent(this::note);
        }
        observer.stateChanged();
    }

    /** Keeps something to tell; it takes the place of an earlier one of its kind. */
    void note(SessionNotice notice) {
        notices.removeIf(earlier -> earlier.kind() == notice.kind());
        notices.add(notice);
    }

    private void markSaved() {
        if (dirty()) {
            history.forgetSaved();
        } else {
            history.markSaved();
        }
    }

    /**
     * Looks whether the file was changed outside since it was last read or saved: first at its size and time, then at its content. A
     * file of another layout with the same project counts as unchanged; its layout and unknown fields are then kept by the next save.
     */
    public ExternalChange checkExternalChange() {
        return take(DiskLook.at(file, saved.stamp()));
    }

    ExternalChange take(DiskLook look) {
        if (look instanceof DiskLook.Same same) {
            saved = saved.withStamp(same.stamp());
        }
        return look instanceof DiskLook.Changed changed ? weigh(changed) : look.withoutProject(file);
    }

    private ExternalChange weigh(DiskLook.Changed changed) {
        LoadedProject loaded = changed.loaded();
        if (saved.holds(loaded.project()) || loaded.project().equals(project())) {
            saved = SavedState.of(loaded, changed.stamp());
            if (!dirty()) {
                history.markSaved();
            }
            observer.stateChanged();
            return new ExternalChange.Unchanged();
        }
        return dirty() ? new ExternalChange.ChangedWhileDirty(loaded) : new ExternalChange.ChangedClean(loaded);
    }

    /**
     * Takes the project from the disk, as an edit that can be undone; open for reading, it just takes its place.
     *
     * @throws SessionException when the file is gone or cannot be read; then nothing changes
     */
    public void reloadFromDisk() throws SessionException {
        SavedState onDisk = SavedState.read(file);
        Project before = project();
        Project after = onDisk.project().orElseThrow();
        saved = onDisk;
        if (readOnly()) {
            history.reset(after);
        } else if (!after.equals(before)) {
            history.edit(TEXTS.text("edit.reload"), after, Optional.empty(), clock.instant());
        }
        history.markSaved();
        if (after.equals(before)) {
            observer.stateChanged();
        } else {
            observer.changed(before, after);
        }
    }

    /**
     * Keeps the project as it is here although the file was changed outside: the next save overwrites what the file holds now, but not
     * what may be written to it after this. Unknown fields that the file holds now are kept.
     */
    public void keepMine() {
        saved = saved.keptOver(DiskLook.at(file, saved.stamp()));
        markSaved();
        observer.stateChanged();
    }

    /**
     * Tries to get the right to write for a project that is open for reading only, and takes what the other wrote meanwhile.
     *
     * @return whether it can be edited now
     * @throws SessionException when the file cannot be read any more
     */
    public boolean tryTakeOver() throws SessionException {
        if (readOnly() && !gate.closed()) {
            WriteAccess asked = WriteAccess.ask(folder);
            if (asked instanceof WriteAccess.Granted granted) {
                takeOver(granted);
            }
        }
        return !readOnly();
    }

    void takeOver(WriteAccess.Granted granted) throws SessionException {
        try {
            if (!(DiskLook.at(file, saved.stamp()) instanceof DiskLook.Same)) {
                reloadFromDisk();
            }
        } catch (SessionException unreadable) {
            granted.release();
            throw unreadable;
        }
        notices.removeIf(SessionNotice::meansReadOnly);
        note(new SessionNotice(SessionNotice.Kind.WRITABLE_NOW, TEXTS.text("writable.now")));
        grant(granted, WriteAccess.findLeft(folder, project()));
        observer.stateChanged();
    }

    /** Returns the file of the test log; it need not exist. */
    public Path logFile() {
        return folder.resolve(TestLog.FILE_NAME);
    }

    /** Returns the folder for results sheets; it need not exist. */
    public Path sheetsFolder() {
        return folder.resolve("sheets");
    }

    /** Returns the folder of the captures; it need not exist. */
    public Path capturesFolder() {
        return folder.resolve("captures");
    }

    /** Returns the revision of the project in the file, as last read or saved: 64 hexadecimal digits. */
    public String revisionSha256() {
        return saved.revision();
    }

    /** Closes the project for good, so that others may write to the folder; unsaved edits are kept for recovery or dropped. */
    void close(boolean keepRecoveryCopy) throws SessionException {
        Optional<RecoveryCopy> copy = keepRecoveryCopy ? recoveryCopy() : Optional.empty();
        Optional<WriteAccess.Granted> held = access;
        access = Optional.empty();
        offers.clear();
        synchronized (gate) {
            gate.close();
            if (held.isPresent()) {
                held.get().giveUp(copy);
            }
        }
    }

    void recover(RecoveryShelf.Left left, String name, Project project) {
        WriteAccess.Granted granted = forget(left);
        granted.shelf().replace(left.file());
        edit(name, before -> project);
        observer.stateChanged();
    }

    void discard(RecoveryShelf.Left left) throws SessionException {
        forget(left);
        left.delete();
        observer.stateChanged();
    }

    private WriteAccess.Granted forget(RecoveryShelf.Left left) {
        if (!offers.removeIf(offer -> offer.isOf(left))) {
            throw new IllegalStateException(
                    "the copy of " + left.copy().madeAt() + " was recovered or discarded already");
        }
        return access.orElseThrow(() -> new IllegalStateException("the project is closed"));
    }

    /** Returns what a crash must not take, when there are unsaved edits. */
    Optional<RecoveryCopy> recoveryCopy() {
        if (readOnly() || !dirty()) {
            return Optional.empty();
        }
        return Optional.of(saved.recoveryCopy(clock.instant(), history.namesSinceSaved(), project()));
    }

    Optional<RecoveryShelf> shelf() {
        return access.map(WriteAccess.Granted::shelf);
    }

    boolean heldElsewhere() {
        return readOnly() && notices.stream().anyMatch(SessionNotice::meansOpenElsewhere);
    }

    void observe(SessionObserver newObserver) {
        observer = newObserver;
    }

    Path file() {
        return file;
    }

    FileStamp stamp() {
        return saved.stamp();
    }
}
