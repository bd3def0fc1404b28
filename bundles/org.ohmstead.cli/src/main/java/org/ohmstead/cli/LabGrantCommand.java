// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.testlog.shared.LabRole;
import org.ohmstead.testlog.shared.SharedLab;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Gives a login a role in the shared log. */
@Command(
        name = "grant",
        description = {
            "Give a login of the server a role in the shared log, in the place of any other: reader (sees), operator (also hands over),"
                    + " lead (also closes chains and makes readers and operators), or none. Leads are made by the owner of the database.",
            ""
        },
        footer = {"", "Example: ohmstead lab grant kestrel.ohmstead bench3 operator"})
final class LabGrantCommand implements Callable<Integer> {
    private static final String NONE = "none";

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "LOGIN", description = "Name of the login, as the server has it.")
    private String login;

    @Parameters(index = "2", paramLabel = "ROLE", description = "reader, operator, lead or none.")
    private String word;

    LabGrantCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        String wanted = word.toLowerCase(Locale.ROOT);
        Optional<LabRole> role = LabRole.ofWord(wanted);
        if (role.isEmpty() && !wanted.equals(NONE)) {
            throw new InputException("There is no role \"" + word + "\". Give reader, operator, lead or none.");
        }
        try (SharedLab lab = LabAccess.of(project.open()).connect()) {
            lab.grant(login, role);
        }
        if (json.wanted()) {
            console.json(
                    JsonNodeFactory.instance.objectNode().put("login", login).put("role", wanted));
        } else {
            console.line(
                    role.isEmpty()
                            ? login + " has no role in the shared log any more."
                            : login + " has the role of " + wanted + " in the shared log.");
        }
        return ExitCodes.DONE;
    }
}
