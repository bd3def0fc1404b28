// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.PublishedSheet;
import org.ohmstead.jobs.SheetAssembly;
import org.ohmstead.jobs.SheetPublisher;
import org.ohmstead.model.Severity;
import org.ohmstead.report.HtmlSheet;
import org.ohmstead.report.LogCsv;
import org.ohmstead.report.LogJson;
import org.ohmstead.report.PdfSheet;
import org.ohmstead.report.ReportException;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** Publishes and exports, and says in the view what came of it. */
final class SheetFiles {
    private final ProjectDesk desk;
    private final SheetMaker maker;
    private final NoticeBar notice;
    private final Consumer<Path> folderOpener;
    private final Supplier<SheetChoice> choice;
    private boolean busy;

    /**
     * Makes it.
     *
     * @param desk with the project
     * @param maker makes sheets
     * @param notice where to say what came of it
     * @param folderOpener shows a folder to the user
     * @param choice in which form sheets are made
     */
    SheetFiles(
            ProjectDesk desk,
            SheetMaker maker,
            NoticeBar notice,
            Consumer<Path> folderOpener,
            Supplier<SheetChoice> choice) {
        this.desk = desk;
        this.maker = maker;
        this.notice = notice;
        this.folderOpener = folderOpener;
        this.choice = choice;
    }

    /** Publishes the saved project's sheet; asks in the view first when there are edits that are not saved. */
    void publish() {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty() || busy) {
            return;
        }
        Optional<String> refusal = refusal(desk.log());
        if (refusal.isPresent()) {
            notice.show(Severity.ERROR, refusal.get(), List.of());
        } else if (session.get().dirty()) {
            notice.show(
                    Severity.WARNING,
                    Texts.say("publish.unsaved"),
                    List.of(new NoticeBar.Choice(
                            Texts.say("publish.save"), "sheet.publish.save", () -> saveAndPublish(session.get()))));
        } else {
            write(session.get());
        }
    }

    private void saveAndPublish(ProjectSession session) {
        desk.save(
                () -> {
                    if (desk.session().filter(session::equals).isPresent()) {
                        write(session);
                    }
                },
                this::failed);
    }

    private void write(ProjectSession session) {
        Path folder = session.folder();
        Path sheets = session.sheetsFolder();
        SheetChoice wanted = choice.get();
        busy = true;
        EndedWork.start(
                desk.work(),
                Texts.say("publish.job"),
                progress -> SheetPublisher.publish(
                        SheetAssembly.assemble(
                                ProjectFolder.open(folder),
                                wanted.wish(),
                                maker.softwareVersion(),
                                maker.clock().instant()),
                        sheets),
                this::published,
                this::failed,
                () -> busy = false);
    }

    private void published(PublishedSheet sheet) {
        busy = false;
        notice.done(
                Texts.say(
                        "publish.done",
                        sheet.html().getFileName(),
                        sheet.pdf().getFileName(),
                        sheet.html().getParent()),
                List.of(openFolder(sheet.html().getParent())));
    }

    private NoticeBar.Choice openFolder(Path folder) {
        return new NoticeBar.Choice(Texts.say("publish.folder"), "sheet.folder", () -> folderOpener.accept(folder));
    }

    /** Returns why no sheet can be made from a log, with what to do. */
    static Optional<String> refusal(LogSnapshot log) {
        return switch (log.state()) {
            case WHOLE -> Optional.empty();
            case NONE -> Optional.of(Texts.say("publish.nothing"));
            case READING -> Optional.of(Texts.say("publish.reading"));
            case BROKEN, UNREADABLE -> Optional.of(Texts.say("publish.refused", sentence(log.sentence())));
        };
    }

    private static String sentence(String words) {
        String text = words.strip();
        if (text.isEmpty()) {
            return Texts.say("publish.untrusted");
        }
        return Character.toUpperCase(text.charAt(0)) + text.substring(1) + (text.endsWith(".") ? "" : ".");
    }

    /** Exports to a file; how its name ends says what: see {@link ExportForm}. */
    void export(Path file) {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty() || busy) {
            return;
        }
        ExportForm form;
        try {
            form = ExportForm.of(file);
        } catch (JobException unknown) {
            failed(unknown);
            return;
        }
        LogSnapshot log = desk.log();
        Optional<String> refusal = form.isSheet() ? refusal(log) : Optional.empty();
        if (refusal.isPresent()) {
            notice.show(Severity.ERROR, refusal.get(), List.of());
            return;
        }
        SheetInput input = SheetInput.of(session.get(), log);
        SheetChoice wanted = choice.get();
        busy = true;
        EndedWork.start(
                desk.work(),
                Texts.say("export.job", file.getFileName()),
                progress -> write(form, input, wanted, file),
                written -> exported(written, form, input),
                this::failed,
                () -> busy = false);
    }

    private Path write(ExportForm form, SheetInput input, SheetChoice wanted, Path file) throws ReportException {
        switch (form) {
            case HTML -> HtmlSheet.write(maker.sheet(input, wanted), file);
            case PDF -> PdfSheet.write(maker.sheet(input, wanted), file);
            case CSV -> LogCsv.write(input.log().entries(), file);
            case JSON -> LogJson.write(input.log().entries(), file);
        }
        return file;
    }

    private void exported(Path file, ExportForm form, SheetInput input) {
        busy = false;
        Path folder = file.toAbsolutePath().getParent();
        if (form.isSheet() && input.draft()) {
            notice.done(Texts.say("export.written.draft", file.toAbsolutePath()), List.of(openFolder(folder)));
        } else if (!form.isSheet() && input.log().state() == LogState.BROKEN) {
            notice.show(
                    Severity.ERROR,
                    Texts.say(
                            "export.written.broken",
                            file.toAbsolutePath(),
                            input.log().sentence()),
                    List.of(openFolder(folder)));
        } else {
            notice.done(Texts.say("export.written", file.toAbsolutePath()), List.of(openFolder(folder)));
        }
    }

    private void failed(Exception failure) {
        busy = false;
        notice.show(Severity.ERROR, failure.getMessage(), List.of());
    }
}
