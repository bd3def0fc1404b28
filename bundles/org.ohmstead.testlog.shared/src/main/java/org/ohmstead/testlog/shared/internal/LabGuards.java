// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared.internal;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.units.text.Messages;

/** Whether the triggers and functions that protect the tables are as they were made. */
public final class LabGuards {
    private static final Messages TEXTS = Messages.of(LabGuards.class);
    private static final Pattern FUNCTION =
            Pattern.compile("CREATE FUNCTION ohmstead\\.(\\w+)\\(.*?AS \\$guard\\$(.*?)\\$guard\\$", Pattern.DOTALL);
    private static final Pattern TRIGGER = Pattern.compile(
            "CREATE TRIGGER (\\w+) (BEFORE [A-Z ]+) ON (ohmstead\\.\\w+)\\s+(FOR EACH \\w+ EXECUTE FUNCTION"
                    + " ohmstead\\.\\w+\\(\\))");

    /** How the server spells the events, which may be in another order than in the statement. */
    private static final Pattern EVENTS = Pattern.compile("BEFORE ([A-Z ]+?)(?: ON .*)?$");

    private LabGuards() {}

    /** Returns what is wrong; empty when nothing is. */
    public static List<VerifyFault> faults(Connection connection) throws SQLException {
        List<VerifyFault> faults = new ArrayList<>();
        compare(wantedFunctions(), functions(connection), "function", faults);
        compare(wantedTriggers(), triggers(connection), "trigger", faults);
        return faults;
    }

    private static void compare(
            Map<String, String> wanted, Map<String, String> found, String what, List<VerifyFault> faults) {
        wanted.forEach((name, text) -> {
            if (!text.equals(found.get(name))) {
                faults.add(fault(TEXTS.text("guard.changed." + what, name)));
            }
        });
        found.keySet().stream()
                .filter(name -> !wanted.containsKey(name))
                .forEach(name -> faults.add(fault(TEXTS.text("guard.foreign." + what, name))));
    }

    private static VerifyFault fault(String sentence) {
        return new VerifyFault(VerifyFault.Kind.GUARDS_CHANGED, 0, "", sentence);
    }

    private static Map<String, String> wantedFunctions() {
        Map<String, String> functions = new TreeMap<>();
        for (LabSchema.Step step : LabSchema.steps()) {
            Matcher matcher = FUNCTION.matcher(step.sql());
            while (matcher.find()) {
                functions.put(matcher.group(1), matcher.group(2));
            }
        }
        return functions;
    }

    private static Map<String, String> functions(Connection connection) throws SQLException {
        return pairs(
                connection,
                "SELECT p.proname, p.prosrc FROM pg_proc p JOIN pg_namespace n ON n.oid = p.pronamespace"
                        + " WHERE n.nspname = 'ohmstead'");
    }

    private static Map<String, String> wantedTriggers() {
        Map<String, String> triggers = new TreeMap<>();
        for (LabSchema.Step step : LabSchema.steps()) {
            Matcher matcher = TRIGGER.matcher(step.sql());
            while (matcher.find()) {
                triggers.put(
                        matcher.group(1),
                        described("A", matcher.group(2) + " ON " + matcher.group(3) + " " + matcher.group(4)));
            }
        }
        return triggers;
    }

    private static Map<String, String> triggers(Connection connection) throws SQLException {
        Map<String, String> triggers = new TreeMap<>();
        pairs(
                        connection,
                        "SELECT t.tgname, t.tgenabled::text || pg_get_triggerdef(t.oid) FROM pg_trigger t"
                                + " JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_namespace n ON n.oid = c.relnamespace"
                                + " WHERE n.nspname = 'ohmstead' AND NOT t.tgisinternal")
                .forEach((name, text) -> triggers.put(
                        name,
                        described(
                                text.substring(0, 1),
                                text.substring(text.indexOf("BEFORE ") < 0 ? 1 : text.indexOf("BEFORE ")))));
        return triggers;
    }

    /** Returns a description in which the events stand in one order. */
    private static String described(String enabled, String definition) {
        Matcher matcher = EVENTS.matcher(definition);
        if (!matcher.find()) {
            return enabled + definition;
        }
        List<String> events = new ArrayList<>(List.of(matcher.group(1).split(" OR ")));
        events.sort(null);
        return enabled + " " + events + definition.substring(matcher.end(1));
    }

    private static Map<String, String> pairs(Connection connection, String query) throws SQLException {
        Map<String, String> pairs = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            while (result.next()) {
                pairs.put(result.getString(1), result.getString(2));
            }
        }
        return pairs;
    }
}
