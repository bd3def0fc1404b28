// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Stimulus;

/** The pages speak German throughout, and each of their mnemonics leads to one field. */
class GermanPagesTest {
    @TempDir
    Path temp;

    /** Something to do on a stage. */
    private interface Scene {
        void play(SectionStage stage);
    }

    private void speaking(String language, Scene scene) {
        SectionTextsTest.speaking(language, () -> {
            try (SectionStage stage = SectionStage.open(temp.resolve(language))) {
                scene.play(stage);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private static void show(SectionStage stage, String id) {
        stage.show(new SectionPages(List.of()).page(id).orElseThrow());
        if (id.equals("plan")) {
            stage.check("plan.addsteps", true);
        }
    }

    /** What a person can read on the widgets below one, but for what the project says. */
    private static List<String> read(Composite parent) {
        List<String> read = new ArrayList<>();
        for (Control control : parent.getChildren()) {
            Optional.ofNullable(control.getToolTipText()).ifPresent(read::add);
            if (control instanceof Label label) {
                read.add(label.getText());
            } else if (control instanceof Button button) {
                read.add(button.getText());
            } else if (control instanceof Link link) {
                read.add(link.getText());
            } else if (control instanceof Combo combo) {
                read.addAll(List.of(combo.getItems()));
            } else if (control instanceof Table table) {
                for (TableColumn column : table.getColumns()) {
                    read.add(column.getText().replaceAll(" \\([^)]*\\)$", ""));
                }
            }
            if (control instanceof Composite inner) {
                read.addAll(read(inner));
            }
        }
        return read;
    }

    /** The English texts that no German one reads like. */
    private static Set<String> englishOnly() throws IOException {
        Properties english = SectionTextsTest.texts("messages.properties");
        Set<Object> only = new HashSet<>(english.values());
        only.removeAll(SectionTextsTest.texts("messages_de.properties").values());
        Set<String> texts = new HashSet<>();
        only.forEach(text -> texts.add(text.toString().replace("''", "'")));
        return texts;
    }

    @ParameterizedTest
    @CsvSource({
        "amplifier, Verstärker, Angaben des Herstellers",
        "bench, Messplatz, Kabel zum Verstärker",
        "parts, Bauteilvorrat, Lastwiderstände im Vorrat",
        "loads, Lasten, Lasten des Messplatzes",
        "plan, Plan, Schritte in der Reihenfolge der Ausführung",
        "sheet, Ergebnisblatt, Kopf des Blatts",
        "checks, Prüfnormale, 'Was zeigt, ob der Messplatz noch ist, was er war'",
        "sharedlog, Gemeinsames Protokoll, Gemeinsames Protokoll des Labors"
    })
    void aPageSpeaksGermanAndNothingElse(String id, String name, String heading) throws IOException {
        Set<String> english = englishOnly();
        speaking("de", stage -> {
            show(stage, id);
            assertEquals(
                    name, new SectionPages(List.of()).page(id).orElseThrow().name());
            List<String> read = read(stage.shell);
            assertTrue(read.contains(heading), read.toString());
            Set<String> left = new TreeSet<>(read);
            left.retainAll(english);
            assertEquals(Set.of(), left);
        });
    }

    @Test
    void theProblemsAndTheNavigatorSpeakGerman() throws IOException {
        Set<String> english = englishOnly();
        speaking("de", stage -> {
            ProblemsComposite problems = stage.show(parent -> new ProblemsComposite(parent, stage.desk, place -> {}));
            List<String> read = read(problems);
            assertTrue(
                    read.containsAll(List.of("Schwere", "Abhilfe", "&Erneut prüfen", "Nur Warnungen")),
                    read.toString());
            Set<String> left = new TreeSet<>(read);
            left.retainAll(english);
            assertEquals(Set.of(), left);
        });
    }

    @ParameterizedTest
    @CsvSource({
        "en, amplifier", "en, bench", "en, plan", "en, sheet", "en, sharedlog",
        "de, amplifier", "de, bench", "de, plan", "de, sheet", "de, sharedlog"
    })
    void noMnemonicOfAPageIsGivenTwice(String language, String id) {
        speaking(language, stage -> {
            show(stage, id);
            Set<Character> taken = new HashSet<>();
            for (String text : read(stage.shell)) {
                int at = text.indexOf('&');
                if (at >= 0) {
                    assertTrue(taken.add(Character.toLowerCase(text.charAt(at + 1))), text + " beside " + taken);
                }
            }
            assertTrue(taken.size() > 3, taken.toString());
        });
    }

    @Test
    void aGermanEditIsNamedInGerman() {
        speaking("de", stage -> {
            show(stage, "amplifier");
            stage.edit("ratings", 0, "mode", "gebrückt");
            assertEquals(Optional.of("Betriebsart der Angabe ändern"), stage.undoName());
            assertEquals(
                    Mode.BRIDGED, stage.project().amplifier().ratings().get(0).mode());
            stage.type("amplifier.model", "Anders");
            assertEquals(Optional.of("Modell des Verstärkers ändern"), stage.undoName());
        });
    }

    @Test
    void idsOfStepsAreTheSameInEveryLanguage() {
        speaking("de", stage -> {
            PlanMatrix matrix = new PlanMatrix(
                    List.of(Mode.BRIDGED, Mode.SINGLE),
                    List.of(stage.project().loads().get(0).id()),
                    List.of(13.65),
                    List.of(new Stimulus.ToneBurst(1000, 0.02, 0.5, -20)),
                    StepTable.USUAL_END,
                    false);
            assertEquals(
                    List.of("burst-bridged-8ohm-13V65", "burst-single-8ohm-13V65"),
                    matrix.missingIn(stage.project()).stream()
                            .map(step -> step.id())
                            .toList());
        });
    }
}
