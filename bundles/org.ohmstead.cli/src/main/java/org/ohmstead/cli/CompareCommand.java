// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.ohmstead.history.Comparison;
import org.ohmstead.history.ComparisonRequest;
import org.ohmstead.history.HistoryException;
import org.ohmstead.history.Period;
import org.ohmstead.history.PriceIndex;
import org.ohmstead.history.PricePerWatt;
import org.ohmstead.history.Subject;
import org.ohmstead.history.SubjectPower;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindException;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Puts amplifiers, or periods of one, beside each other. */
@Command(
        name = "compare",
        description = {
            "Compare up to ten amplifiers, or the same one in several periods, at a common supply voltage and load.",
            "",
            "Readings at that voltage count as they are; else the power comes from the curve through readings on both"
                    + " sides of it, never beyond them. What the same meters make uncertain in both cancels. Prices come"
                    + " from the projects; with --index-table they are brought to the money of one period.",
            "",
            "With --lab what other benches handed over to the shared log is compared as well, each amplifier with its"
                    + " serial number; the projects' own readings count once. The first project that names a shared log"
                    + " says which.",
            "",
            "The index table is CSV in UTF-8 with the header period,index, a comma between columns and a point as"
                    + " decimal mark; a period is a year 2024 or a month 2024-03. Nothing is interpolated in it.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when something could not be compared.",
            "Example: ohmstead compare kestrel.ohmstead heron.ohmstead --at 14.4V --load 4ohm",
            "Example: ohmstead compare kestrel.ohmstead --at 13.8 --load 2 --mode bridged --period 2022 --period"
                    + " 2025..",
            "Example: ohmstead compare kestrel.ohmstead --at 14.4 --load 4 --lab-find 'amplifier:Heron*'"
        })
final class CompareCommand implements Callable<Integer> {
    private static final double HIGHEST_VOLTS = 100;

    private final Console console;

    @Spec
    private CommandSpec spec;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(arity = "1..*", paramLabel = "PROJECT", description = "Folders of projects or their project.json.")
    private List<Path> projects;

    @Option(
            names = "--at",
            paramLabel = "V",
            required = true,
            description = "The common supply voltage at the terminals.")
    private String supplyVolts;

    @Option(
            names = "--load",
            paramLabel = "R",
            required = true,
            description = "The common load, for example 4ohm or 2R67.")
    private String loadOhms;

    @Option(
            names = "--mode",
            paramLabel = "MODE",
            defaultValue = "STEREO",
            description = "How the channels meet the load: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}).")
    private Mode mode;

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            defaultValue = "CONTINUOUS",
            description = "Steady tone or burst: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE}).")
    private PowerKind kind;

    @Option(
            names = "--distortion",
            paramLabel = "PERCENT",
            description = "Power at this limit of THD_F (default: the end point that most have).")
    private String distortion;

    @Option(
            names = "--frequency",
            paramLabel = "F",
            description = "Of the tone, for example 1kHz (default: the one that most have).")
    private String frequency;

    @Option(
            names = "--period",
            paramLabel = "PERIOD",
            description =
                    "Compare what was measured then: 2024, 2024-03, 2023-05-01..2024 or 2024..; give it several times"
                            + " to compare periods.")
    private List<String> periods = new ArrayList<>();

    @Option(names = "--lab", description = "Compare with what is in the shared log, too.")
    private boolean lab;

    @Option(
            names = "--lab-find",
            paramLabel = "QUERY",
            description = "Compare with what such a query finds in the shared log; as for lab find.")
    private String labQuery;

    @Option(names = "--index-table", paramLabel = "FILE", description = "Table of a price index; needs --base.")
    private Path indexTable;

    @Option(
            names = "--base",
            paramLabel = "PERIOD",
            description = "Period of the table to whose money prices are brought.")
    private String base;

    @Option(
            names = "--confidence",
            paramLabel = "PERCENT",
            defaultValue = "95",
            description = "Of intervals and statements (default ${DEFAULT-VALUE}).")
    private String confidence;

    CompareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if ((indexTable == null) != (base == null)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--index-table and --base go together: the table, and the period of it to compare in.");
        }
        ComparisonRequest request = request();
        try {
            Comparison comparison = Comparison.of(subjects(), request);
            CompareReport report = new CompareReport(comparison, prices(comparison));
            if (json.wanted()) {
                console.json(report.document());
            } else {
                report.print(console);
            }
            return comparison.refusals().isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
        } catch (HistoryException refused) {
            throw new InputException(refused.getMessage());
        }
    }

    private ComparisonRequest request() throws InputException {
        double volts = Quantities.positive(supplyVolts, Unit.VOLT, "--at");
        if (volts > HIGHEST_VOLTS) {
            throw new InputException("--at is " + supplyVolts + "; supply volts lie above 0 and up to 100.");
        }
        double level = Quantities.ratio(confidence, "--confidence");
        if (level <= 0 || level >= 1) {
            throw new InputException(
                    "--confidence is " + confidence + "; it must lie between 0 and 100 %, such as 95.");
        }
        return new ComparisonRequest(
                volts,
                Quantities.positive(loadOhms, Unit.OHM, "--load"),
                mode,
                kind,
                endPoint(),
                Quantities.optionalPositive(frequency, Unit.HERTZ, "--frequency"),
                level);
    }

    private Optional<EndPoint> endPoint() throws InputException {
        if (distortion == null) {
            return Optional.empty();
        }
        double ratio = Quantities.ratio(distortion, "--distortion");
        if (ratio <= 0) {
            throw new InputException("--distortion is " + distortion + "; a limit above 0 % is needed, such as 1.");
        }
        return Optional.of(new EndPoint.DistortionLimit(ratio, DistortionMeasure.THD_F));
    }

    private List<Subject> subjects() throws Exception {
        Map<String, Period> times = times();
        Optional<Find> inLab = inLab();
        List<Subject> subjects = new ArrayList<>();
        List<ProjectFolder> folders = new ArrayList<>();
        Set<String> known = new HashSet<>();
        for (Path path : projects) {
            ProjectFolder folder = ProjectFolder.open(path);
            folders.add(folder);
            List<LogEntry> entries = entries(folder, inLab.isPresent());
            entries.forEach(entry -> known.add(entry.hash()));
            for (Map.Entry<String, Period> time : times.entrySet()) {
                List<Subject> found = Subject.of(name(folder), folder.project(), entries, time.getValue());
                if (found.isEmpty() && inLab.isEmpty()) {
                    throw new InputException(
                            nothing("The log of " + folder.folder(), time.getKey()) + " Look at: ohmstead log list");
                }
                subjects.addAll(found);
            }
        }
        if (inLab.isPresent()) {
            subjects.addAll(labSubjects(folders, inLab.get(), known, times));
        }
        if (subjects.isEmpty()) {
            throw new InputException(
                    "Neither the projects nor the shared log hold such a valid reading. Look at: ohmstead lab find");
        }
        return Subject.withOwnNames(subjects);
    }

    /** Returns the periods by how they were given; all time, with no words, when there are none. */
    private Map<String, Period> times() throws InputException {
        Map<String, Period> times = new LinkedHashMap<>();
        for (String period : periods) {
            times.put(period, LogTrendCommand.period(period));
        }
        return times.isEmpty() ? Map.of("", Period.ALWAYS) : times;
    }

    /** Returns what is wanted of the shared log; empty when nothing is. */
    private Optional<Find> inLab() throws InputException {
        if (!lab && labQuery == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(Find.parse(labQuery == null ? "" : labQuery));
        } catch (FindException unclear) {
            throw new InputException(unclear.getMessage());
        }
    }

    private static List<LogEntry> entries(ProjectFolder folder, boolean mayBeMissing)
            throws JobException, TestLogException {
        if (mayBeMissing && !Files.exists(folder.logFile())) {
            return List.of();
        }
        try (TestLog log = folder.readLog()) {
            return LogTrust.trustedEntries(log);
        }
    }

    private List<Subject> labSubjects(
            List<ProjectFolder> folders, Find find, Set<String> known, Map<String, Period> times) throws Exception {
        ProjectFolder naming = folders.stream()
                .filter(folder -> folder.project().sharedLog().isPresent())
                .findFirst()
                .orElse(folders.get(0));
        List<LogEntry> entries = new LabReadings(console, naming).besides(find, known);
        List<Subject> subjects = new ArrayList<>();
        for (Map.Entry<String, Period> time : times.entrySet()) {
            List<Subject> found = Subject.of(LabReadings.SOURCE, entries, time.getValue());
            if (found.isEmpty()) {
                console.message(nothing("Besides those of the projects, the shared log", time.getKey()));
            }
            subjects.addAll(found);
        }
        return subjects;
    }

    private static String nothing(String where, String period) {
        return where + " holds no valid reading" + (period.isEmpty() ? "" : " of " + period) + ".";
    }

    private static String name(ProjectFolder folder) {
        Path last = folder.folder().toAbsolutePath().normalize().getFileName();
        return last == null ? folder.project().title() : last.toString().replaceAll("\\.ohmstead$", "");
    }

    private List<PricePerWatt> prices(Comparison comparison) throws HistoryException {
        Optional<PriceIndex> index = indexTable == null ? Optional.empty() : Optional.of(PriceIndex.read(indexTable));
        List<PricePerWatt> prices = new ArrayList<>();
        for (SubjectPower power : comparison.powers()) {
            Optional<PricePerWatt> price = PricePerWatt.of(power, mode);
            if (price.isPresent()) {
                prices.add(index.isPresent() ? price.get().adjusted(index.get(), base) : price.get());
            }
        }
        return prices;
    }
}
