// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.signal.sound.SoundSeries;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.ProjectSession;

/**
 * The series that the user works on, the one that it is compared with, and where they are kept. Every change is written at once, in the
 * background, one after the other; the ones before can be taken back. On the user interface's thread.
 */
final class SeriesShelf {
    private static final int MOST_STEPS_BACK = 100;

    private final BackgroundWork work;
    private final Runnable changed;
    private final Consumer<String> failed;
    private final Deque<SoundSeries> before = new ArrayDeque<>();
    private Optional<SeriesFiles> files = Optional.empty();
    private boolean readOnly;
    private List<String> names = List.of();
    private Optional<String> name = Optional.empty();
    private SoundSeries series = SoundSeries.EMPTY;
    private Optional<String> otherName = Optional.empty();
    private Optional<SoundSeries> other = Optional.empty();
    private final Map<String, SoundSeries> unwritten = new LinkedHashMap<>();
    private boolean writing;
    private long project;

    /**
     * Makes an empty shelf.
     *
     * @param changed runs after each change
     * @param failed hears why a file could not be read or written
     */
    SeriesShelf(BackgroundWork work, Runnable changed, Consumer<String> failed) {
        this.work = work;
        this.changed = changed;
        this.failed = failed;
    }

    boolean open() {
        return files.isPresent();
    }

    boolean changeable() {
        return files.isPresent() && !readOnly;
    }

    List<String> names() {
        return names;
    }

    Optional<String> name() {
        return name;
    }

    SoundSeries series() {
        return series;
    }

    Optional<String> otherName() {
        return otherName;
    }

    Optional<SoundSeries> other() {
        return other;
    }

    boolean canUndo() {
        return changeable() && !before.isEmpty();
    }

    /** Turns to a project, or to none. */
    void follow(Optional<ProjectSession> session) {
        writeRest();
        project++;
        files = session.map(open -> new SeriesFiles(open.folder()));
        readOnly = session.map(ProjectSession::readOnly).orElse(false);
        names = List.of();
        name = Optional.empty();
        series = SoundSeries.EMPTY;
        otherName = Optional.empty();
        other = Optional.empty();
        writing = false;
        unwritten.clear();
        before.clear();
        changed.run();
        files.ifPresent(there -> start("work.list", () -> there.names(), found -> {
            names = found;
            changed.run();
            if (!found.isEmpty()) {
                choose(found.get(0));
            }
        }));
    }

    /** Turns to another series. */
    void choose(String wanted) {
        read(wanted, found -> {
            name = Optional.of(wanted);
            series = found;
            before.clear();
            changed.run();
        });
    }

    /** What is still to be written is newer than the file. */
    private void read(String wanted, Consumer<SoundSeries> done) {
        SeriesFiles there = files.orElseThrow();
        Optional<SoundSeries> newer = Optional.ofNullable(unwritten.get(wanted));
        if (newer.isPresent()) {
            done.accept(newer.get());
        } else {
            start("work.read", () -> there.read(wanted), done);
        }
    }

    /** Compares with another series, or with none. */
    void compareWith(Optional<String> wanted) {
        if (wanted.isEmpty()) {
            otherName = Optional.empty();
            other = Optional.empty();
            changed.run();
        } else {
            read(wanted.get(), found -> {
                otherName = wanted;
                other = Optional.of(found);
                changed.run();
            });
        }
    }

    /** Puts another state of the series in place of the present one and writes it. */
    void change(SoundSeries newSeries) {
        if (newSeries.equals(series) || !changeable()) {
            return;
        }
        if (name.isEmpty()) {
            name = Optional.of(SeriesFiles.free(Texts.say("series.first"), names));
            addName();
        }
        before.push(series);
        if (before.size() > MOST_STEPS_BACK) {
            before.removeLast();
        }
        series = newSeries;
        write();
        changed.run();
    }

    /** Takes the last change back. */
    void undo() {
        if (canUndo()) {
            series = before.pop();
            write();
            changed.run();
        }
    }

    /** Begins a new series: an empty one, or a copy of the present one, which is then the one compared with. */
    void begin(boolean copy) {
        SoundSeries made = copy ? series : SoundSeries.EMPTY;
        if (copy && name.isPresent()) {
            otherName = name;
            other = Optional.of(series);
        }
        name = Optional.of(
                SeriesFiles.free(copy ? name.orElse(Texts.say("series.first")) : Texts.say("series.first"), names));
        addName();
        series = made.withName(name.get());
        before.clear();
        write();
        changed.run();
    }

    private void addName() {
        List<String> more = new ArrayList<>(names);
        more.add(name.orElseThrow());
        more.sort(String.CASE_INSENSITIVE_ORDER);
        names = List.copyOf(more);
    }

    private void write() {
        unwritten.put(name.orElseThrow(), series);
        if (!writing) {
            writeNext();
        }
    }

    private void writeNext() {
        writing = !unwritten.isEmpty();
        if (writing) {
            SeriesFiles there = files.orElseThrow();
            Map.Entry<String, SoundSeries> next =
                    unwritten.entrySet().iterator().next();
            String target = next.getKey();
            SoundSeries content = next.getValue();
            long mine = project;
            work.start(
                    Texts.say("work.write"),
                    progress -> {
                        there.write(target, content);
                        return true;
                    },
                    done -> ifSame(mine, () -> written(target, content)),
                    failure -> {
                        failed.accept(failure.getMessage());
                        ifSame(mine, () -> written(target, content));
                    });
        }
    }

    /** What is not written yet is written to the project that it belongs to. */
    private void writeRest() {
        for (Map.Entry<String, SoundSeries> each : Map.copyOf(unwritten).entrySet()) {
            SeriesFiles there = files.orElseThrow();
            work.start(
                    Texts.say("work.write"),
                    progress -> {
                        there.write(each.getKey(), each.getValue());
                        return true;
                    },
                    done -> {},
                    failure -> failed.accept(failure.getMessage()));
        }
    }

    private void written(String target, SoundSeries content) {
        unwritten.remove(target, content);
        writeNext();
    }

    private <T> void start(String title, Reading<T> reading, Consumer<T> done) {
        long mine = project;
        work.start(
                Texts.say(title),
                progress -> reading.read(),
                found -> ifSame(mine, () -> done.accept(found)),
                failure -> ifSame(mine, () -> failed.accept(failure.getMessage())));
    }

    private void ifSame(long ofProject, Runnable action) {
        if (ofProject == project) {
            action.run();
        }
    }

    /** Reads something from a file. */
    private interface Reading<T> {
        T read() throws Exception;
    }
}
