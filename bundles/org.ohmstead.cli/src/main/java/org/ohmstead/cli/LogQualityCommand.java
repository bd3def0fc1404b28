// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.history.quality.GaugeReview;
import org.ohmstead.history.quality.QualityReview;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says what the check standards tell about the bench. */
@Command(
        name = "quality",
        description = {"${bundle:log.quality.does}", "", "${bundle:log.quality.more}", ""},
        footer = {"", "${bundle:log.quality.exit}", "${bundle:log.quality.example}"})
final class LogQualityCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "STANDARD", descriptionKey = "log.quality.STANDARD")
    private List<String> ids = new ArrayList<>();

    @Option(names = "--notes", descriptionKey = "log.quality.notes")
    private boolean notes;

    LogQualityCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        List<CheckStandard> wanted = wanted(folder.project());
        List<LogEntry> entries = List.of();
        if (Files.exists(folder.logFile())) {
            try (TestLog log = folder.readLog()) {
                entries = LogTrust.trustedEntries(log);
            }
        }
        ZoneId zone = ZoneId.systemDefault();
        LocalDate today = LocalDate.now(Clock.system(zone));
        List<QualityReview> reviews = new ArrayList<>();
        for (CheckStandard standard : wanted) {
            reviews.add(QualityReview.of(folder.project(), standard, entries, today, zone));
        }
        List<GaugeReview> gauges = GaugeReview.of(reviews);
        boolean mayRun = reviews.stream().allMatch(QualityReview::mayRun);
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("mayRun", mayRun);
            ArrayNode list = root.putArray("standards");
            reviews.forEach(review -> QualityJson.fill(list.addObject(), review));
            ArrayNode more = root.putArray("gauges");
            gauges.forEach(gauge -> QualityJson.fill(more.addObject(), gauge));
            console.json(root);
        } else {
            print(reviews, gauges);
        }
        return mayRun ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private List<CheckStandard> wanted(Project from) throws InputException {
        if (ids.isEmpty() && from.checkStandards().isEmpty()) {
            CheckStandards.find(from, "");
        }
        List<CheckStandard> wanted = new ArrayList<>();
        for (String id : ids) {
            wanted.add(CheckStandards.find(from, id));
        }
        return wanted.isEmpty() ? from.checkStandards() : wanted;
    }

    private void print(List<QualityReview> reviews, List<GaugeReview> gauges) {
        QualityText.table(console, reviews);
        console.line("");
        QualityText.findings(console, reviews);
        if (notes) {
            console.line("");
            QualityText.notes(console, reviews);
            for (GaugeReview gauge : gauges) {
                console.line(Texts.of("quality.gauge", Texts.some(gauge.items()), gauge.what(), gauge.sentence()));
            }
        }
    }
}
