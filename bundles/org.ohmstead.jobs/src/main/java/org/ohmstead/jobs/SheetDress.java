// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.history.Comparison;
import org.ohmstead.history.HistoryException;
import org.ohmstead.history.Period;
import org.ohmstead.history.Subject;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.report.ReportException;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetComparison;
import org.ohmstead.report.SheetForm;
import org.ohmstead.report.SheetLogo;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * Brings a sheet into its form: the logo from the project's folder, and what a comparison sets beside each other. What cannot be had
 * becomes a problem of the sheet, which is made without it.
 */
public final class SheetDress {
    private static final Messages TEXTS = Messages.of(SheetDress.class);

    /** The place of the logo in a project; a problem that begins with it tells why the sheet has none. */
    public static final String LOGO = "$.sheet.layout.logoFile";

    /** The place of the projects to compare with. */
    public static final String PROJECTS = "$.sheet.layout.comparedProjects";

    /** The place of the periods to compare. */
    public static final String PERIODS = "$.sheet.layout.comparedPeriods";

    private final Path folder;
    private final List<Problem> problems = new ArrayList<>();

    private SheetDress(Path folder) {
        this.folder = folder;
    }

    /**
     * Returns a sheet in the form that is wanted.
     *
     * @param plain the sheet
     * @param folder of its project
     * @param entries of its project's log, whose chain is whole
     * @param wish in which form
     */
    public static ResultsSheet dress(ResultsSheet plain, Path folder, List<LogEntry> entries, SheetWish wish) {
        SheetDress dress = new SheetDress(folder);
        SheetLayout layout = plain.project().sheet().layout();
        SheetForm form = SheetForm.of(layout);
        SheetForm wished = form.withDesign(wish.design().orElse(form.design()))
                .withPaper(wish.paper().orElse(form.paper()))
                .withLanguage(wish.language().orElse(form.language()))
                .withLogo(dress.logo(layout.logoFile()));
        if (wished.design() == SheetDesign.COMPARISON) {
            SheetLayout compared = layout.withComparedProjects(
                            wish.comparedProjects().isEmpty() ? layout.comparedProjects() : wish.comparedProjects())
                    .withComparedPeriods(
                            wish.comparedPeriods().isEmpty() ? layout.comparedPeriods() : wish.comparedPeriods());
            wished = wished.withComparison(dress.comparison(plain.project(), entries, compared));
        }
        return dress.on(plain, wished);
    }

    private ResultsSheet on(ResultsSheet plain, SheetForm form) {
        List<Problem> all = new ArrayList<>(plain.problems());
        all.addAll(problems);
        return new ResultsSheet(
                plain.project(),
                plain.readings(),
                plain.curves(),
                plain.ratings(),
                plain.log(),
                plain.softwareVersion(),
                plain.producedAt(),
                all,
                form);
    }

    private void problem(String where, String what, String remedy) {
        problems.add(new Problem(Severity.WARNING, where, what, remedy));
    }

    private Optional<SheetLogo> logo(String file) {
        if (file.isBlank()) {
            return Optional.empty();
        }
        try {
            return Optional.of(SheetLogo.read(folder, file));
        } catch (ReportException refused) {
            problem(LOGO, refused.getMessage(), TEXTS.text("sheet.noLogo"));
            return Optional.empty();
        }
    }

    private Optional<SheetComparison> comparison(Project own, List<LogEntry> entries, SheetLayout layout) {
        List<Period> periods = periods(layout.comparedPeriods());
        List<Subject> subjects = new ArrayList<>();
        add(subjects, name(folder, own), own, entries, periods);
        for (int index = 0; index < layout.comparedProjects().size(); index++) {
            other(subjects, layout.comparedProjects().get(index), PROJECTS + "[" + index + "]", periods);
        }
        if (subjects.size() > Comparison.MOST_SUBJECTS) {
            problem(
                    PROJECTS,
                    TEXTS.text(
                            "compare.many",
                            Integer.toString(subjects.size()),
                            Integer.toString(Comparison.MOST_SUBJECTS)),
                    TEXTS.text("compare.many.remedy"));
        }
        List<Subject> shown = subjects.subList(0, Math.min(subjects.size(), Comparison.MOST_SUBJECTS));
        return shown.isEmpty() ? Optional.empty() : Optional.of(new SheetComparison(Subject.withOwnNames(shown)));
    }

    private List<Period> periods(List<String> texts) {
        List<Period> periods = new ArrayList<>();
        for (int index = 0; index < texts.size(); index++) {
            try {
                periods.add(Period.parse(texts.get(index)));
            } catch (HistoryException unclear) {
                problem(PERIODS + "[" + index + "]", unclear.getMessage(), TEXTS.text("compare.unclear.remedy"));
            }
        }
        return periods.isEmpty() ? List.of(Period.ALWAYS) : periods;
    }

    private static void add(
            List<Subject> subjects, String source, Project project, List<LogEntry> entries, List<Period> periods) {
        periods.forEach(period -> subjects.addAll(Subject.of(source, project, entries, period)));
    }

    /** Of what names another computer only the rest counts: Windows would log in there for whoever wrote the project. */
    private static String onThisMachine(String path) {
        return path.replaceFirst("^[/\\\\]{2,}", "/");
    }

    private void other(List<Subject> subjects, String text, String where, List<Period> periods) {
        try {
            ProjectFolder other = ProjectFolder.open(folder.resolve(onThisMachine(text)));
            List<LogEntry> entries;
            try (TestLog log = other.readLog()) {
                entries = LogTrust.trustedEntries(log);
            }
            int before = subjects.size();
            add(subjects, name(other.folder(), other.project()), other.project(), entries, periods);
            if (subjects.size() == before) {
                problem(where, TEXTS.text("compare.empty", text), TEXTS.text("compare.empty.remedy"));
            }
        } catch (ProjectFileException | JobException | TestLogException | InvalidPathException unusable) {
            problem(where, unusable.getMessage(), TEXTS.text("compare.unusable.remedy", text));
        }
    }

    private static String name(Path folder, Project project) {
        Path whole =
                Files.isDirectory(folder) ? folder : folder.toAbsolutePath().getParent();
        Path last = whole == null ? null : whole.toAbsolutePath().normalize().getFileName();
        return last == null ? project.title() : last.toString().replaceAll("\\.ohmstead$", "");
    }
}
