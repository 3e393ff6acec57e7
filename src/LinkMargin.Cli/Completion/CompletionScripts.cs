namespace LinkMargin.Cli.Completion;

/// <summary>Scripts that make a shell ask the program how a command line could continue.</summary>
internal static class CompletionScripts
{
    /// <summary>Prefix of each word that a script passes on, because a word may be empty.</summary>
    public const char Before = '=';

    /// <summary>The word that makes the program list candidates.</summary>
    public const string Words = "words";

    /// <summary>The shells.</summary>
    public static IReadOnlyList<string> Shells { get; } = ["bash", "zsh", "fish", "pwsh"];

    /// <summary>The script of a shell.</summary>
    public static string For(string shell) => shell switch
    {
        "bash" => Bash,
        "zsh" => Zsh,
        "fish" => Fish,
        "pwsh" => PowerShell,
        _ => throw new ArgumentOutOfRangeException(nameof(shell), shell, "Not a known shell."),
    };

    private const string Bash = """
        # Completion of linkmargin for bash: put this line into ~/.bashrc
        #   eval "$(linkmargin completion bash)"
        _linkmargin() {
            local word=${COMP_WORDS[COMP_CWORD]} line typed=("${COMP_WORDS[@]:1:COMP_CWORD}")
            COMPREPLY=()
            while IFS= read -r line; do
                case $word in
                    \"*|\'*) COMPREPLY+=("$line") ;;
                    *) COMPREPLY+=("$(printf %q "$line")") ;;
                esac
            done < <(linkmargin completion words -- "${typed[@]/#/=}" 2>/dev/null)
        }
        complete -o default -F _linkmargin linkmargin

        """;

    private const string Zsh = """
        #compdef linkmargin
        # Completion of linkmargin for zsh: put this line into ~/.zshrc, below compinit
        #   source <(linkmargin completion zsh)
        _linkmargin() {
            local -a found
            found=("${(@f)$(linkmargin completion words -- "${(@)words[2,CURRENT]/#/=}" 2>/dev/null)}")
            if [[ -n $found[1] ]]; then
                compadd -a found
            else
                _files
            fi
        }
        compdef _linkmargin linkmargin

        """;

    private const string Fish = """
        # Completion of linkmargin for fish:
        #   linkmargin completion fish > ~/.config/fish/completions/linkmargin.fish
        function __linkmargin_words
            set -l before (commandline -opc)
            set -l word (commandline -ct)
            linkmargin completion words -- =$before[2..-1] "=$word" 2>/dev/null
        end
        complete -c linkmargin -a '(__linkmargin_words)'

        """;

    private const string PowerShell = """
        # Completion of linkmargin for PowerShell: put this line into $PROFILE
        #   linkmargin completion pwsh | Out-String | Invoke-Expression
        Register-ArgumentCompleter -Native -CommandName linkmargin -ScriptBlock {
            param($word, $line, $cursor)
            $words = @($line.CommandElements | Select-Object -Skip 1 | ForEach-Object { '=' + $_.ToString() })
            if ($word -eq '') { $words += '=' }
            linkmargin completion words -- @words 2>$null | ForEach-Object {
                $text = if ($_ -match '[^\w./:-]') { "'" + $_.Replace("'", "''") + "'" } else { $_ }
                [System.Management.Automation.CompletionResult]::new($text, $_, 'ParameterValue', $_)
            }
        }

        """;
}
