// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
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
    private static final String REFUSED =
            " Nothing is published from a log that cannot be trusted; the test log's Verify shows each fault.";

    private final ProjectDesk desk;
    private final SheetMaker maker;
    private final NoticeBar notice;
    private final Consumer<Path> folderOpener;
    private boolean busy;

    /**
     * Makes it.
     *
     * @param desk with the project
     * @param maker makes sheets
     * @param notice where to say what came of it
     * @param folderOpener shows a folder to the user
     */
    SheetFiles(ProjectDesk desk, SheetMaker maker, NoticeBar notice, Consumer<Path> folderOpener) {
        this.desk = desk;
        this.maker = maker;
        this.notice = notice;
        this.folderOpener = folderOpener;
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
                    "The project has edits that are not saved. A published sheet must agree with the saved project.",
                    List.of(new NoticeBar.Choice(
                            "&Save and publish", "sheet.publish.save", () -> saveAndPublish(session.get()))));
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
        busy = true;
        EndedWork.start(
                desk.work(),
                "Publishing the results sheet",
                progress -> SheetPublisher.publish(
                        SheetAssembly.assemble(
                                ProjectFolder.open(folder),
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
                "Published " + sheet.html().getFileName() + " and "
                        + sheet.pdf().getFileName() + " in " + sheet.html().getParent() + ".",
                List.of(openFolder(sheet.html().getParent())));
    }

    private NoticeBar.Choice openFolder(Path folder) {
        return new NoticeBar.Choice("Open &folder", "sheet.folder", () -> folderOpener.accept(folder));
    }

    /** Returns why no sheet can be made from a log, with what to do. */
    static Optional<String> refusal(LogSnapshot log) {
        return switch (log.state()) {
            case WHOLE -> Optional.empty();
            case NONE -> Optional.of("There are no readings yet, so there is nothing to publish.");
            case READING -> Optional.of("The test log is being read. Try again in a moment.");
            case BROKEN, UNREADABLE -> Optional.of(sentence(log.sentence()) + REFUSED);
        };
    }

    private static String sentence(String words) {
        String text = words.strip();
        if (text.isEmpty()) {
            return "The test log cannot be trusted.";
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
        busy = true;
        EndedWork.start(
                desk.work(),
                "Exporting " + file.getFileName(),
                progress -> write(form, input, file),
                written -> exported(written, form, input),
                this::failed,
                () -> busy = false);
    }

    private Path write(ExportForm form, SheetInput input, Path file) throws ReportException {
        switch (form) {
            case HTML -> HtmlSheet.write(maker.sheet(input), file);
            case PDF -> PdfSheet.write(maker.sheet(input), file);
            case CSV -> LogCsv.write(input.log().entries(), file);
            case JSON -> LogJson.write(input.log().entries(), file);
        }
        return file;
    }

    private void exported(Path file, ExportForm form, SheetInput input) {
        busy = false;
        Path folder = file.toAbsolutePath().getParent();
        String written = "Wrote " + file.toAbsolutePath() + ".";
        if (form.isSheet() && input.draft()) {
            notice.done(
                    written + " It is a draft and says so, because the project has edits that are not saved.",
                    List.of(openFolder(folder)));
        } else if (!form.isSheet() && input.log().state() == LogState.BROKEN) {
            notice.show(
                    Severity.ERROR,
                    written + " Its entries cannot be relied on: " + input.log().sentence(),
                    List.of(openFolder(folder)));
        } else {
            notice.done(written, List.of(openFolder(folder)));
        }
    }

    private void failed(Exception failure) {
        busy = false;
        notice.show(Severity.ERROR, failure.getMessage(), List.of());
    }
}
