// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.text.Messages;

/** The part of the desk that watches the files of the open project. User interface's thread only. */
final class DiskDesk {
    private static final Messages TEXTS = Messages.of(DiskDesk.class);
    private static final Duration PAUSE = Duration.ofSeconds(2);

    /** What the watch works with. */
    record Wiring(BackgroundWork work, Alarm alarm, OffThread offThread, DeskListeners listeners) {}

    private final Wiring wiring;
    private final Supplier<Optional<ProjectSession>> session;
    private final SaveQueue saves;
    private final LogDesk log;
    private Optional<Registration> watching = Optional.empty();
    private String toldOf = "";
    private boolean looking;

    DiskDesk(Wiring wiring, Supplier<Optional<ProjectSession>> session, SaveQueue saves, LogDesk log) {
        this.wiring = wiring;
        this.session = session;
        this.saves = saves;
        this.log = log;
    }

    void start() {
        stop();
        watching = Optional.of(wiring.alarm().every(PAUSE, () -> wiring.work().later(this::look)));
    }

    void stop() {
        watching.ifPresent(Registration::close);
        watching = Optional.empty();
    }

    void look() {
        if (session.get().isEmpty() || looking || saves.saving()) {
            return;
        }
        ProjectSession open = session.get().orElseThrow();
        DiskWatch.Watched watched = new DiskWatch.Watched(
                open, open.file(), open.stamp(), open.heldElsewhere(), open.logFile(), log.stamp());
        looking = true;
        wiring.offThread()
                .run(
                        () -> DiskWatch.look(watched),
                        seen -> {
                            looking = false;
                            seen(watched, seen);
                        },
                        failure -> {
                            looking = false;
                            tellOnce(
                                    open,
                                    Guard.reason(failure),
                                    new ExternalChange.Unreadable(Guard.reason(failure)),
                                    SessionNotice.Kind.UNREADABLE);
                        });
    }

    private boolean isOpen(ProjectSession other) {
        return session.get().filter(other::equals).isPresent();
    }

    private void seen(DiskWatch.Watched watched, DiskWatch.Seen seen) {
        ProjectSession open = watched.session();
        seen.access().ifPresent(access -> takeOver(open, access));
        if (!isOpen(open)) {
            return;
        }
        // What was seen counts only if nothing was read or written here meanwhile.
        if (!saves.saving() && open.stamp() == watched.stamp()) {
            weigh(open, seen.look());
        }
        if (seen.logChanged() && log.stamp().equals(watched.logStamp())) {
            log.refresh();
        }
    }

    private void takeOver(ProjectSession open, WriteAccess.Granted access) {
        try {
            if (isOpen(open) && open.readOnly()) {
                List<SessionNotice> before = open.notices();
                open.takeOver(access);
                open.notices().stream()
                        .filter(notice -> !before.contains(notice))
                        .forEach(this::tell);
            } else {
                access.lock().close();
            }
        } catch (SessionException unreadable) {
            note(open, new SessionNotice(SessionNotice.Kind.UNREADABLE, unreadable.getMessage()));
        } catch (ProjectFileException kept) {
            note(open, new SessionNotice(SessionNotice.Kind.LOCK_KEPT, kept.getMessage()));
        }
    }

    private void weigh(ProjectSession open, DiskLook look) {
        ExternalChange change = open.take(look);
        if (change instanceof ExternalChange.Unchanged) {
            toldOf = "";
        } else if (change instanceof ExternalChange.ChangedClean) {
            reload(open, change);
        } else if (change instanceof ExternalChange.ChangedWhileDirty) {
            tellOnce(open, ((DiskLook.Changed) look).stamp().sha256(), change, SessionNotice.Kind.CONFLICT);
        } else if (change instanceof ExternalChange.Unreadable unreadable) {
            tellOnce(open, unreadable.sentence(), change, SessionNotice.Kind.UNREADABLE);
        } else {
            tellOnce(open, "", change, SessionNotice.Kind.VANISHED);
        }
    }

    private void reload(ProjectSession open, ExternalChange change) {
        try {
            open.reloadFromDisk();
            toldOf = "";
            note(
                    open,
                    new SessionNotice(
                            SessionNotice.Kind.RELOADED, sentence(open, SessionNotice.Kind.RELOADED, change)));
            wiring.listeners().tell(listener -> listener.externalChange(change));
        } catch (SessionException gone) {
            // It changed again since it was looked at; the next look says what it is now, if this does not stay so.
            tellOnce(
                    open,
                    gone.getMessage(),
                    new ExternalChange.Unreadable(gone.getMessage()),
                    SessionNotice.Kind.UNREADABLE);
        }
    }

    private void tellOnce(ProjectSession open, String what, ExternalChange change, SessionNotice.Kind kind) {
        String key = open.folder() + " " + kind + " " + what;
        if (!key.equals(toldOf) && isOpen(open)) {
            toldOf = key;
            note(open, new SessionNotice(kind, sentence(open, kind, change)));
            wiring.listeners().tell(listener -> listener.externalChange(change));
        }
    }

    private static String sentence(ProjectSession open, SessionNotice.Kind kind, ExternalChange change) {
        String file = String.valueOf(open.file().getFileName());
        if (change instanceof ExternalChange.Unreadable unreadable) {
            return TEXTS.text("disk.unreadable", file, unreadable.sentence());
        }
        if (change instanceof ExternalChange.Vanished vanished) {
            return vanished.sentence();
        }
        if (kind != SessionNotice.Kind.RELOADED) {
            return TEXTS.text("disk.conflict", file);
        }
        return TEXTS.text(open.readOnly() ? "disk.reloaded" : "disk.reloaded.undo", file);
    }

    private void note(ProjectSession open, SessionNotice notice) {
        open.note(notice);
        tell(notice);
    }

    private void tell(SessionNotice notice) {
        wiring.listeners().tell(listener -> listener.noticed(notice));
    }
}
