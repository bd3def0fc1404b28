// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.CsvDialect;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.ImportFault;
import org.ohmstead.exchange.ImportSettings;
import org.ohmstead.exchange.LogLines;
import org.ohmstead.exchange.ReadingImport;
import org.ohmstead.exchange.TableLimits;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes readings or another bench's log into the log. */
@Command(
        name = "import",
        description = {
            "${bundle:log.import.does}",
            "",
            "${bundle:log.import.more}",
            "",
            "${bundle:log.import.more2}",
            ""
        },
        footer = {"", "${bundle:log.import.exit}", "${bundle:log.import.note}", "${bundle:log.import.note2}"})
final class LogImportCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "FILE", descriptionKey = "log.import.FILE")
    private Path file;

    @Option(names = "--decimal-comma", descriptionKey = "log.import.decimal-comma")
    private boolean decimalComma;

    @Option(names = "--skip-bad", descriptionKey = "log.import.skip-bad")
    private boolean skipBad;

    @Option(names = "--dry-run", descriptionKey = "log.import.dry-run")
    private boolean dryRun;

    @Option(names = "--uncertainty-percent", paramLabel = "PERCENT", descriptionKey = "log.import.uncertainty-percent")
    private Double uncertaintyPercent;

    @Option(names = "--amplifier", paramLabel = "NAME", descriptionKey = "log.import.amplifier")
    private String amplifier;

    @Option(names = "--serial", paramLabel = "NUMBER", descriptionKey = "log.import.serial")
    private String serial;

    @Option(names = "--bench", paramLabel = "NAME", descriptionKey = "log.import.bench")
    private String bench;

    @Option(names = "--as-readings", descriptionKey = "log.import.as-readings")
    private boolean asReadings;

    @Option(names = "--who", paramLabel = "NAME", descriptionKey = "log.import.who")
    private String who = System.getProperty("user.name", "");

    LogImportCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        boolean lines = name().endsWith(".jsonl");
        boolean otherLog = Files.isDirectory(file) || name().endsWith(".db");
        if (name().endsWith(".zip")) {
            throw new InputException(Texts.of("import.packed", file));
        }
        if (otherLog || lines && !asReadings) {
            return join(folder);
        }
        ImportSettings settings = settings(folder);
        ReadingImport table = lines ? LogLines.readings(file, settings) : ReadingImport.read(file, settings);
        if (dryRun) {
            return tell(table, Optional.empty(), Optional.empty());
        }
        if (table.faultCount() > 0 && !skipBad) {
            table.faults().forEach(fault -> console.message(fault.text()));
            throw new InputException(Texts.of("import.nothing", file.getFileName(), table.badReadings()));
        }
        ReadingImport.Report report;
        try (ProjectLock lock = ProjectLock.acquire(folder.folder());
                TestLog log = LogTrust.openToAdd(folder.logFile(), console::message)) {
            report = table.addTo(log, skipBad, new ConsoleExchange(console));
        }
        return tell(
                table,
                Optional.of(report),
                HandingOver.all(folder, report.added().size()));
    }

    private String name() {
        return String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    }

    private ImportSettings settings(ProjectFolder folder) throws InputException {
        Specimen own = Specimen.of(folder.project());
        boolean other = amplifier != null;
        Specimen specimen = new Specimen(
                other ? amplifier : own.amplifier(),
                serial != null ? serial : other ? "" : own.serialNumber(),
                bench != null ? bench : "");
        if (uncertaintyPercent != null && !(uncertaintyPercent > 0 && uncertaintyPercent <= 100)) {
            throw new InputException(Texts.of("import.uncertainty"));
        }
        return new ImportSettings(
                decimalComma ? CsvDialect.SEMICOLON : CsvDialect.COMMA,
                Optional.of(specimen),
                "",
                uncertaintyPercent == null ? OptionalDouble.empty() : OptionalDouble.of(uncertaintyPercent / 100),
                folder.loaded().revisionSha256(),
                Ohmstead.version(),
                TableLimits.USUAL);
    }

    private int join(ProjectFolder folder)
            throws ExchangeException, TestLogException, ProjectFileException, JobException, IOException,
                    InterruptedException {
        if (bench == null || bench.isBlank()) {
            throw new InputException(Texts.of("import.bench"));
        }
        return new Joining(file, bench, who).to(folder, console, json.wanted());
    }

    private int tell(ReadingImport table, Optional<ReadingImport.Report> report, Optional<SharingState> sharedLog)
            throws IOException {
        List<String> added = report.map(ReadingImport.Report::added).orElse(List.of());
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("sha256", table.sha256());
            root.put("good", table.readings().size());
            root.put("bad", table.badReadings());
            root.put("voidedRows", table.voidedRows());
            ArrayNode entries = root.putArray("added");
            added.forEach(entries::add);
            report.ifPresent(done -> root.put("alreadyThere", done.alreadyThere()));
            ArrayNode faults = root.putArray("faults");
            table.faults().stream().map(ImportFault::text).forEach(faults::add);
            ArrayNode unused = root.putArray("unusedHeadings");
            table.unusedHeadings().forEach(unused::add);
            HandingOver.fill(root, sharedLog);
            console.json(root);
        } else {
            print(table, report, added);
            HandingOver.say(console, sharedLog);
        }
        return table.badReadings() > 0 ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }

    private void print(ReadingImport table, Optional<ReadingImport.Report> report, List<String> added) {
        table.faults().forEach(fault -> console.message(fault.text()));
        if (!table.unusedHeadings().isEmpty()) {
            console.message(Texts.of("import.unused", String.join(", ", table.unusedHeadings())));
        }
        if (table.voidedRows() > 0) {
            console.line(Texts.of("import.voided", table.voidedRows()));
        }
        if (report.isEmpty()) {
            console.line(Texts.of("import.can", table.readings().size(), table.badReadings()));
            return;
        }
        console.line(
                added.isEmpty()
                        ? Texts.of("import.none")
                        : Texts.of("import.added", added.size(), added.get(0), added.get(added.size() - 1)));
        if (report.get().alreadyThere() > 0) {
            console.line(Texts.of(
                    report.get().alreadyVoided() > 0 ? "import.already.voided" : "import.already",
                    report.get().alreadyThere(),
                    report.get().alreadyVoided()));
        }
        if (report.get().leftOut() > 0) {
            console.line(Texts.of("import.leftOut", report.get().leftOut()));
        }
    }
}
