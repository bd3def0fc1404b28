// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.measure.standard.LoggedGain;
import org.ohmstead.signal.gain.ChannelBalance;
import org.ohmstead.signal.gain.GainWords;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** How alike channels are. */
@Command(
        name = "match",
        description = {"${bundle:setup.match.does}", ""},
        footer = {"", "${bundle:setup.match.exit}", "${bundle:setup.match.example}"})
final class SetupMatchCommand implements Callable<Integer> {
    private static final int MOST_CHANNELS = 16;
    private static final double MOST_VOLTS = 1000;
    private static final double WIDEST_TOLERANCE_DB = 20;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(arity = "0..*", paramLabel = "VOLTS", descriptionKey = "setup.match.VOLTS")
    private List<String> volts = new ArrayList<>();

    @Option(names = "--project", paramLabel = "PROJECT", descriptionKey = "setup.match.project")
    private Path path;

    @Option(
            names = "--tolerance-db",
            paramLabel = "T",
            defaultValue = "0.5",
            descriptionKey = "setup.match.tolerance-db")
    private String tolerance;

    SetupMatchCommand(Console console) {
        this.console = console;
    }

    /** The balance, and of which entry it is; empty when it was typed. */
    private record Found(ChannelBalance balance, String entryId) {}

    @Override
    public Integer call() throws Exception {
        double toleranceDb = Quantities.within(tolerance, Unit.DECIBEL, 0, WIDEST_TOLERANCE_DB, "--tolerance-db");
        if ((path != null) != volts.isEmpty()) {
            throw new InputException(path == null ? Texts.of("match.missing") : Texts.of("match.both"));
        }
        Found found = path == null ? new Found(typed(toleranceDb), "") : logged(toleranceDb);
        if (json.wanted()) {
            console.json(document(found));
        } else {
            print(found);
        }
        return found.balance().matched() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private ChannelBalance typed(double toleranceDb) throws InputException {
        if (volts.size() < 2 || volts.size() > MOST_CHANNELS) {
            throw new InputException(Texts.of("match.count", volts.size(), MOST_CHANNELS));
        }
        List<ChannelBalance.Channel> channels = new ArrayList<>();
        for (String each : volts) {
            String name = String.valueOf((char) ('A' + channels.size()));
            double voltsRms = Quantities.positive(each, Unit.VOLT, Texts.of("match.reading", name));
            if (voltsRms > MOST_VOLTS) {
                throw new InputException(Texts.of("match.tooHigh", name, each, Texts.number(MOST_VOLTS)));
            }
            channels.add(new ChannelBalance.Channel(name, voltsRms));
        }
        return new ChannelBalance(channels, toleranceDb);
    }

    private Found logged(double toleranceDb) throws Exception {
        ProjectFolder folder = ProjectFolder.open(path);
        List<LogEntry> entries;
        try (TestLog log = folder.readLog()) {
            entries = LogTrust.trustedEntries(log);
        }
        for (int i = entries.size() - 1; i >= 0; i--) {
            LogEntry entry = entries.get(i);
            if (!entry.voided() && folder.project().reasonSetAside(entry.id()).isEmpty()) {
                Optional<ChannelBalance> balance =
                        entry.reading().flatMap(reading -> LoggedGain.balance(reading, toleranceDb));
                if (balance.isPresent()) {
                    return new Found(balance.get(), entry.id());
                }
            }
        }
        throw new InputException(Texts.of("match.none", folder.folder()));
    }

    private void print(Found found) {
        if (!found.entryId().isEmpty()) {
            console.line(Texts.of("match.found", found.entryId()));
        }
        TextTable table = TextTable.named("match.columns");
        List<ChannelBalance.Channel> channels = found.balance().channels();
        for (int i = 0; i < channels.size(); i++) {
            table.row(
                    channels.get(i).name(),
                    Texts.four(channels.get(i).voltsRms()),
                    Texts.fixed(found.balance().differenceDb(i), 3));
        }
        table.print(console);
        console.line("");
        console.line(GainWords.current().balance(found.balance()));
        Cautions.print(console, cautions());
    }

    private static List<String> cautions() {
        return List.of(Texts.of("match.caution"));
    }

    private static ObjectNode document(Found found) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        if (!found.entryId().isEmpty()) {
            root.put("entry", found.entryId());
        }
        ArrayNode channels = root.putArray("channels");
        for (int i = 0; i < found.balance().channels().size(); i++) {
            ObjectNode channel = channels.addObject();
            channel.put("name", found.balance().channels().get(i).name());
            channel.put("voltsRms", found.balance().channels().get(i).voltsRms());
            channel.put("differenceDb", found.balance().differenceDb(i));
        }
        root.put("spreadDb", found.balance().spreadDb());
        root.put("powerRatio", found.balance().powerRatio());
        root.put("loudest", found.balance().loudest().name());
        root.put("toleranceDb", found.balance().toleranceDb());
        root.put("matched", found.balance().matched());
        Cautions.put(root, cautions());
        return root;
    }
}
