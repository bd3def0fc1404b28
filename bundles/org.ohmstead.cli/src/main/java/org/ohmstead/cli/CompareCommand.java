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
            "${bundle:compare.does}",
            "",
            "${bundle:compare.more}",
            "",
            "${bundle:compare.more2}",
            "",
            "${bundle:compare.more3}",
            ""
        },
        footer = {
            "",
            "${bundle:compare.exit}",
            "${bundle:compare.example}",
            "${bundle:compare.example2}",
            "${bundle:compare.example3}"
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

    @Parameters(arity = "1..*", paramLabel = "PROJECT", descriptionKey = "compare.PROJECT")
    private List<Path> projects;

    @Option(names = "--at", paramLabel = "V", required = true, descriptionKey = "compare.at")
    private String supplyVolts;

    @Option(names = "--load", paramLabel = "R", required = true, descriptionKey = "compare.load")
    private String loadOhms;

    @Option(names = "--mode", paramLabel = "MODE", defaultValue = "STEREO", descriptionKey = "compare.mode")
    private Mode mode;

    @Option(names = "--kind", paramLabel = "KIND", defaultValue = "CONTINUOUS", descriptionKey = "compare.kind")
    private PowerKind kind;

    @Option(names = "--distortion", paramLabel = "PERCENT", descriptionKey = "compare.distortion")
    private String distortion;

    @Option(names = "--frequency", paramLabel = "F", descriptionKey = "compare.frequency")
    private String frequency;

    @Option(names = "--period", paramLabel = "PERIOD", descriptionKey = "compare.period")
    private List<String> periods = new ArrayList<>();

    @Option(names = "--lab", descriptionKey = "compare.lab")
    private boolean lab;

    @Option(names = "--lab-find", paramLabel = "QUERY", descriptionKey = "compare.lab-find")
    private String labQuery;

    @Option(names = "--index-table", paramLabel = "FILE", descriptionKey = "compare.index-table")
    private Path indexTable;

    @Option(names = "--base", paramLabel = "PERIOD", descriptionKey = "compare.base")
    private String base;

    @Option(names = "--confidence", paramLabel = "PERCENT", defaultValue = "95", descriptionKey = "compare.confidence")
    private String confidence;

    CompareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if ((indexTable == null) != (base == null)) {
            throw new ParameterException(spec.commandLine(), Texts.of("compare.indexBase"));
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
            throw new InputException(Texts.of("compare.volts", supplyVolts));
        }
        double level = Quantities.ratio(confidence, "--confidence");
        if (level <= 0 || level >= 1) {
            throw new InputException(Texts.of("compare.confidence", confidence));
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
            throw new InputException(Texts.of("compare.distortion", distortion));
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
                            Texts.of("compare.seeLog", nothing("compare.ofProject", folder.folder(), time.getKey())));
                }
                subjects.addAll(found);
            }
        }
        if (inLab.isPresent()) {
            subjects.addAll(labSubjects(folders, inLab.get(), known, times));
        }
        if (subjects.isEmpty()) {
            throw new InputException(Texts.of("compare.nowhere"));
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
                console.message(nothing("compare.ofLab", "", time.getKey()));
            }
            subjects.addAll(found);
        }
        return subjects;
    }

    private static String nothing(String key, Object where, String period) {
        return period.isEmpty() ? Texts.of(key, where) : Texts.of(key + ".period", where, period);
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
