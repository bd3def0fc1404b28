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
            "Take readings of a table (csv, xlsx) into the log, or join the log of another bench (jsonl, log.db, a"
                    + " project's folder).",
            "",
            "A table's headings name the unit of each quantity: power_W, power (mW), load [ohm], supply_V, case_K,"
                    + " thd_f_percent. Needed: taken_at_utc (or taken_at with a zone), mode, load_ohm, frequency_Hz,"
                    + " end_point with end_point_limit_percent, power_W, power_std_uncertainty_W (or"
                    + " power_expanded_uncertainty_W, k = 2), thd_f_percent, supply_V. Nothing is added unless all rows"
                    + " are good, and nothing comes twice.",
            "",
            "A joined log keeps its entries and its chain; a further entry shows where it joined.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when rows were left out.",
            "Examples: ohmstead log import kestrel.ohmstead earlier.csv",
            "          ohmstead log import kestrel.ohmstead ../bench2/kestrel.ohmstead --bench \"bench 2\""
        })
final class LogImportCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "FILE", description = "The table, or the other log.")
    private Path file;

    @Option(
            names = "--decimal-comma",
            description =
                    "The csv has semicolons between cells and decimal commas (a first line that says so is believed"
                            + " without it).")
    private boolean decimalComma;

    @Option(names = "--skip-bad", description = "Add the good readings although something is wrong with others.")
    private boolean skipBad;

    @Option(names = "--dry-run", description = "Only say what would come in from a table.")
    private boolean dryRun;

    @Option(
            names = "--uncertainty-percent",
            paramLabel = "PERCENT",
            description = "Standard uncertainty (k = 1) of the powers, where the table has no column for it.")
    private Double uncertaintyPercent;

    @Option(
            names = "--amplifier",
            paramLabel = "NAME",
            description =
                    "Which amplifier the readings are about, where the table does not say (default: the project's).")
    private String amplifier;

    @Option(names = "--serial", paramLabel = "NUMBER", description = "Its serial number.")
    private String serial;

    @Option(
            names = "--bench",
            paramLabel = "NAME",
            description = "What the other bench is called; needed to join its log.")
    private String bench;

    @Option(
            names = "--as-readings",
            description = "Take the readings of a jsonl as this bench's own, as imported, instead of joining the log.")
    private boolean asReadings;

    @Option(
            names = "--who",
            paramLabel = "NAME",
            description = "Who imports (default: the name you are logged in under).")
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
            throw new InputException("A packed project is not imported. Unpack it with: ohmstead project unpack " + file
                    + " FOLDER, then import the folder to join its log.");
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
            throw new InputException("Nothing was imported from " + file.getFileName() + ": " + table.badReadings()
                    + " of its readings cannot be. Put them right, or leave them out with --skip-bad.");
        }
        ReadingImport.Report report;
        try (ProjectLock lock = ProjectLock.acquire(folder.folder());
                TestLog log = TestLog.open(folder.logFile())) {
            LogTrust.requireWhole(log);
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
            throw new InputException("--uncertainty-percent must lie above 0 and at most at 100.");
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
            throw new InputException("To join another log the name of its bench is needed. Give it with --bench.");
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
            console.message("Not used: the columns " + String.join(", ", table.unusedHeadings()) + ".");
        }
        if (table.voidedRows() > 0) {
            console.line(table.voidedRows() + " rows are voided and were passed over.");
        }
        if (report.isEmpty()) {
            console.line(table.readings().size() + " readings can come in, " + table.badReadings() + " cannot.");
            return;
        }
        console.line(
                added.isEmpty()
                        ? "No reading was added."
                        : added.size() + " readings were added, " + added.get(0) + " to " + added.get(added.size() - 1)
                                + ".");
        if (report.get().alreadyThere() > 0) {
            console.line(report.get().alreadyThere() + " were in the log already"
                    + (report.get().alreadyVoided() > 0 ? ", " + report.get().alreadyVoided() + " of them voided" : "")
                    + ".");
        }
        if (report.get().leftOut() > 0) {
            console.line(report.get().leftOut() + " were left out.");
        }
    }
}
