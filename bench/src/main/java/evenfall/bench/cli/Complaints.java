package evenfall.bench.cli;

import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.trace.TraceFormatException;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.FileSystemException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;

/** One line for everything that goes wrong: where, what is wrong, what is allowed; and its exit status. */
final class Complaints implements CommandLine.IParameterExceptionHandler, CommandLine.IExecutionExceptionHandler {
    private static final int LONGEST_SHOWN = 60;

    private final PrintStream err;

    Complaints(PrintStream err) {
        this.err = err;
    }

    @Override
    public int handleParseException(ParameterException e, String[] args) {
        say(parameter(e));
        debug(e, args);
        return Evenfall.WRONG_INPUT;
    }

    @Override
    public int handleExecutionException(Exception e, CommandLine command, CommandLine.@Nullable ParseResult parsed) {
        return unexpected(
                e, parsed == null ? new String[0] : parsed.originalArgs().toArray(new String[0]));
    }

    int unexpected(Throwable e, String[] args) {
        int status = Evenfall.FAILED;
        if (e instanceof ConfigException || e instanceof TraceFormatException) {
            say(e.getMessage());
            status = Evenfall.WRONG_INPUT;
        } else if (e instanceof FileSystemException file) {
            say(file.getFile() + ": " + FileCheck.reason(file));
        } else if (e instanceof IOException) {
            say(e.getMessage());
        } else {
            String message = e.getMessage() == null ? "" : ": " + e.getMessage();
            say("unexpected " + e.getClass().getSimpleName() + message + " (" + Evenfall.DEBUG + " shows where)");
        }
        debug(e, args);
        return status;
    }

    private void say(@Nullable String message) {
        String text = message == null ? "failed, without a reason given" : message;
        err.println("evenfall: " + text.replaceAll("\\s*[\\r\\n]+\\s*", " "));
        err.flush();
    }

    private void debug(Throwable e, String[] args) {
        if (Arrays.asList(args).contains(Evenfall.DEBUG)) {
            e.printStackTrace(err);
        }
    }

    private static String parameter(ParameterException e) {
        CommandLine command = e.getCommandLine();
        if (e instanceof CommandLine.UnmatchedArgumentException unmatched) {
            return unmatched(unmatched, command);
        }
        if (e instanceof CommandLine.MissingParameterException missing) {
            return missing(missing, command);
        }
        if (e instanceof CommandLine.OverwrittenOptionException twice) {
            return "option " + name(twice.getOverwritten()) + ": is given twice; allowed: once";
        }
        ArgSpec spec = e.getArgSpec();
        if (spec != null && e.getValue() != null) {
            return place(spec) + ": " + shown(e.getValue()) + " cannot be used; allowed: " + allowed(spec);
        }
        String place = spec == null ? command.getCommandName() : place(spec);
        return place + ": " + e.getMessage() + "; allowed: " + (spec == null ? synopsis(command) : allowed(spec));
    }

    private static String shown(String value) {
        if (value.isBlank()) {
            return "an empty text";
        }
        return value.length() > LONGEST_SHOWN ? value.substring(0, LONGEST_SHOWN) + "…" : value;
    }

    private static String unmatched(CommandLine.UnmatchedArgumentException e, CommandLine command) {
        String word = e.getUnmatched().isEmpty() ? "" : e.getUnmatched().get(0);
        List<String> near = e.getSuggestions();
        if (e.isUnknownOption()) {
            List<String> all = command.getCommandSpec().options().stream()
                    .filter(o -> !o.hidden())
                    .map(OptionSpec::longestName)
                    .sorted()
                    .toList();
            return "option " + word + ": is not known; allowed: " + String.join(", ", near.isEmpty() ? all : near);
        }
        if (!command.getSubcommands().isEmpty()) {
            List<String> all = List.copyOf(command.getSubcommands().keySet());
            return "there is no subcommand " + word + "; allowed: " + String.join(", ", near.isEmpty() ? all : near);
        }
        return command.getCommandName() + ": " + word + " is one word too many; allowed: " + synopsis(command);
    }

    private static String missing(CommandLine.MissingParameterException e, CommandLine command) {
        List<ArgSpec> specs = e.getMissing();
        if (specs.isEmpty()) {
            return command.getCommandName() + ": " + e.getMessage() + "; allowed: " + synopsis(command);
        }
        ArgSpec spec = specs.get(0);
        String wrong = spec.isOption() ? "has no value" : "is missing";
        return place(spec) + ": " + wrong + "; allowed: " + allowed(spec);
    }

    private static String synopsis(CommandLine command) {
        String synopsis =
                CommandLine.Help.Ansi.OFF.string(command.getHelp().synopsis(0)).replaceAll("\\s+", " ");
        return synopsis.strip();
    }

    private static String place(ArgSpec spec) {
        return spec.isOption() ? "option " + name(spec) : spec.paramLabel();
    }

    private static String name(ArgSpec spec) {
        return spec instanceof OptionSpec option ? option.longestName() : spec.paramLabel();
    }

    private static String allowed(ArgSpec spec) {
        if (spec.typeInfo().isMap()) {
            return spec.paramLabel();
        }
        Class<?> type = spec.auxiliaryTypes()[0];
        if (type == double.class || type == Double.class) {
            return "a number, as " + spec.paramLabel();
        }
        if (type == int.class || type == Integer.class || type == long.class || type == Long.class) {
            return "a whole number, as " + spec.paramLabel();
        }
        if (type.isEnum()) {
            return Arrays.stream(type.getEnumConstants())
                    .map(c -> c.toString().toLowerCase(Locale.ROOT))
                    .collect(Collectors.joining(", "));
        }
        String[] words = spec.description();
        return words.length > 0 ? asPartOfALine(words[0]) : spec.paramLabel();
    }

    private static String asPartOfALine(String sentence) {
        String text = sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
        return text.isEmpty() ? text : Character.toLowerCase(text.charAt(0)) + text.substring(1);
    }
}
